using System.Text.RegularExpressions;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Panels;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

/// <summary>What a kind is called changes nothing: all that a device does stands in its kind's text.</summary>
public partial class RenamingTests
{
    private static readonly KindLibrary Renamed = new(new RenamedKinds());

    public static TheoryData<string> Names => [.. Samples.Panels.Select(p => p.Name)];

    [Fact]
    public void ChangesNoBlueprint()
    {
        foreach (var line in StandardKindsTests.Lines)
        {
            var before = Declared.Device(line);
            var after = Declared.Device(RenamedKinds.Word + line, library: Renamed);

            Nameless(after).Should().BeEquivalentTo(Nameless(before), line);
        }
    }

    private static Blueprint Nameless(Blueprint blueprint)
    {
        var none = new Kind("", null, null, null, new Span(new SourceText("", ""), 0, 0));
        var device = blueprint.Network.Devices[0] with { Kind = "" };
        return blueprint with { Kind = none, Network = blueprint.Network with { Devices = [device] } };
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ChangesNoPanel(string name)
    {
        var text = Samples.Panels.Single(p => p.Name == name).Text;
        var before = PanelBinder.Bind(PanelParser.Parse(new SourceText(name, text)), KindLibrary.Standard);
        var after = PanelBinder.Bind(PanelParser.Parse(new SourceText(name, Rename(text))), Renamed);

        after.Findings.Select(f => f.Code).Should().Equal(before.Findings.Select(f => f.Code));
        if (before.Netlist is { } netlist)
            Plain(NetlistJson.ToText(after.Netlist!, indented: false))
                .Should()
                .Be(Plain(NetlistJson.ToText(netlist, indented: false)));
    }

    private static string Rename(string text)
    {
        var panel = PanelParser.Parse(new SourceText("", text)).Panel;
        foreach (var declaration in panel.Statements.OfType<DeclarationSyntax>().Reverse())
            text = text.Insert(declaration.Span.Start, RenamedKinds.Word);
        return text;
    }

    /// <summary>Without the word in front of kinds and the places that it shifts.</summary>
    private static string Plain(string json) =>
        Spans().Replace(json.Replace("\"" + RenamedKinds.Word, "\"", StringComparison.Ordinal), "");

    [GeneratedRegex("""\"span\":\[[\d,]*\]""")]
    private static partial Regex Spans();
}
