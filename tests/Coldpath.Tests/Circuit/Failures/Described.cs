using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Wiring;
using FluentAssertions;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>Panels of this folder as netlists, before any common failure is added.</summary>
internal static class Described
{
    /// <summary>The text of a file beside the tests.</summary>
    public static string Text(string file) =>
        File.ReadAllText(Path.Combine(RepositoryRoot.Path, "tests/Coldpath.Tests/Circuit/Failures", file));

    /// <summary>Of a description in which nothing is wrong.</summary>
    public static Netlist Netlist(string text)
    {
        var parsed = PanelParser.Parse(new SourceText("test.panel", text));
        var bound = PanelBinder.Bind(parsed, KindLibrary.Standard);
        bound.Findings.Should().BeEmpty();
        return bound.Netlist!;
    }
}
