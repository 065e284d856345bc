using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>
/// Findings, worked out once more from the exported netlist by the plain interpreter: there if and only if it finds them too.
/// Of a panel with too many states to look at each, what a sample shows must be among the findings.
/// </summary>
public sealed class FindingsRecomputedTests
{
    private const int MostStates = 50_000;

    /// <summary>Findings that name no devices here, since how they are grouped is a matter of telling.</summary>
    private static readonly string[] ByName =
    [
        "phase-to-phase-short",
        "supplies-paralleled",
        "unprotected-short",
        "chatter",
        "race-changes-running",
    ];

    private static readonly string[] ByDevice =
    [
        "runs-with-stops-pressed",
        "coil-blocked",
        "coil-never-pulls",
        "coil-never-drops",
        "way-without-overload",
        "way-without-short-circuit-device",
        "bypass-during-ramp",
    ];

    public static TheoryData<string> Files =>
        [
            .. new[] { "panels", "panels/faulty" }
                .SelectMany(f => Directory.GetFiles(Path.Combine(RepositoryRoot.Path, f), "*.panel"))
                .Select(f => Path.GetRelativePath(RepositoryRoot.Path, f))
                .Order(StringComparer.Ordinal),
        ];

    public static TheoryData<string> Cards => [.. Catalogue.All.Select(c => c.Card.Name)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Findings_of_a_panel_are_those_of_the_interpreter(string file) =>
        Compare(File.ReadAllText(Path.Combine(RepositoryRoot.Path, file)));

    [Theory]
    [MemberData(nameof(Cards))]
    public void Findings_of_a_bad_example_are_those_of_the_interpreter(string name) =>
        Compare(Catalogue.Find(name)!.Card.Example.BadPanel);

    private static void Compare(string text)
    {
        var source = new SourceText("recomputed.panel", text);
        var netlist = PanelBinder.Bind(PanelParser.Parse(source), KindLibrary.Standard).Netlist!;
        var trade = new Trade(netlist.WithoutFailures());
        using var interpreter = new Interpreter();
        var survey = new Survey(interpreter, trade.Netlist, MostStates);
        var said = Workbench.Check(source, CancellationToken.None).Findings.Select(Named).ToHashSet();
        var shown = Shorts.Found(trade, survey).Concat(Controls.Found(trade, survey)).ToHashSet();
        if (said.Contains("missing-interlock"))
            shown.Remove("phase-to-phase-short");
        if (survey.Complete == true)
        {
            shown.UnionWith(Controls.NeverPulls(trade, survey));
            shown.UnionWith(Controls.NeverDrops(trade, survey));
            shown.UnionWith(Ways.Found(trade, survey));
            shown.UnionWith(Isolation.Found(trade, survey));
            said.Where(IsRecomputed).Should().BeEquivalentTo(shown);
        }
        else
            shown.Should().BeSubsetOf(said);
    }

    private static bool IsRecomputed(string finding) =>
        ByName.Contains(finding)
        || ByDevice.Append("live-behind-main-isolator").Contains(finding.Split(' ')[0]);

    private static string Named(Finding finding) =>
        ByDevice.Contains(finding.Name) ? $"{finding.Name} {string.Join(' ', finding.Devices)}"
        : finding.Name == "live-behind-main-isolator"
            ? $"{finding.Name} {finding.Devices[0]} {string.Join(' ', finding.Points)}"
        : finding.Name;
}
