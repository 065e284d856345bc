using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Panels.Binding;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;
using FluentAssertions;

namespace Coldpath.Tests.Panels;

/// <summary>Binds panels written in tests, with the hand-made kinds.</summary>
internal static class Bound
{
    private const string Header = """
        panel "Test"
          rules   IEC
          system  400 V 3-phase 50 Hz, TN-S
        supply MAINS

        """;

    /// <summary>The lines after a header and a supply MAINS; anything found fails the test.</summary>
    public static (Panel Panel, Netlist Netlist) Good(string lines)
    {
        var result = Any(lines);
        result.Findings.Select(f => f.Message).Should().BeEmpty();
        return (result.Panel, result.Netlist!);
    }

    public static BoundResult Any(string lines) => Whole(Header + lines);

    public static BoundResult Whole(string text) =>
        new Binder(
            PanelParser.Parse(new SourceText("test.panel", text)),
            [],
            HandMade.Make,
            Neighbours.None
        ).Bind();

    /// <summary>The net of a point.</summary>
    public static string NetOf(this Netlist netlist, string point) =>
        netlist.Points.Single(p => p.Name == point).Net;

    public static void ShouldJoin(this Netlist netlist, params string[] points) =>
        points
            .Select(netlist.NetOf)
            .Distinct()
            .Should()
            .ContainSingle($"{string.Join(", ", points)} are one net");

    public static void ShouldPart(this Netlist netlist, params string[] points) =>
        points.Select(netlist.NetOf).Should().OnlyHaveUniqueItems();
}
