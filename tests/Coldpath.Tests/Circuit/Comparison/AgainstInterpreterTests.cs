using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

public class AgainstInterpreterTests(ITestOutputHelper output)
{
    private const int SmallPanels = 1800;
    private const int LargePanels = 200;
    private const int MostShown = 5;

    /// <summary>Everything the interpreter tabulates, for every assignment of 2,000 panels.</summary>
    [Fact]
    public void Engine_and_interpreter_agree_on_random_panels()
    {
        using var interpreter = new Interpreter();
        var wrong = new List<int>();
        var shown = new List<string>();
        foreach (var (number, panel) in Small().Concat(Large()))
        {
            shown.AddRange(Coverage.Shown(panel));
            if (Comparison.Differences(panel, interpreter.Table(panel.Netlist)).Count == 0)
                continue;
            wrong.Add(number);
            if (wrong.Count <= MostShown)
                output.WriteLine(Disagreement.Told(panel.Netlist, interpreter));
        }
        wrong.Should().BeEmpty();
        ShouldCover(shown);
    }

    private void ShouldCover(IEnumerable<string> shown)
    {
        var counts = shown.CountBy(what => what).ToDictionary();
        foreach (var (what, least) in Coverage.Wanted)
        {
            var part = (double)counts.GetValueOrDefault(what) / (SmallPanels + LargePanels);
            output.WriteLine($"{100 * part, 5:0.0} % of panels: {what}");
            part.Should().BeGreaterThanOrEqualTo(least, what);
        }
    }

    private static IEnumerable<(int, Behaviour)> Small() => Panels(0, SmallPanels, 256);

    private static IEnumerable<(int, Behaviour)> Large() => Panels(100_000, LargePanels, 16_384);

    private static IEnumerable<(int, Behaviour)> Panels(int first, int count, int mostAssignments) =>
        from number in Enumerable.Range(first, count)
        let netlist = RandomPanels.Panel(number, mostAssignments)
        select (number, new Behaviour(netlist, new DiagramTable()));
}
