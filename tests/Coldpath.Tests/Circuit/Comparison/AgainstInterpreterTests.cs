using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

public class AgainstInterpreterTests(ITestOutputHelper output)
{
    private const int MostShown = 5;

    /// <summary>Everything the interpreter tabulates, for every assignment of 2,000 panels.</summary>
    [Fact]
    public void Engine_and_interpreter_agree_on_random_panels()
    {
        using var interpreter = new Interpreter();
        var coverage = new Coverage();
        var wrong = new List<int>();
        foreach (var (number, panel) in Small().Concat(Large()))
        {
            coverage.Add(panel);
            if (Comparison.Differences(panel, interpreter.Table(panel.Netlist)).Count == 0)
                continue;
            wrong.Add(number);
            if (wrong.Count <= MostShown)
                output.WriteLine(Disagreement.Told(panel.Netlist, interpreter));
        }
        foreach (var line in coverage.Told)
            output.WriteLine(line);
        wrong.Should().BeEmpty();
        coverage.Missing.Should().BeEmpty();
    }

    private static IEnumerable<(int, Behaviour)> Small() => Panels(0, 1800, 256);

    private static IEnumerable<(int, Behaviour)> Large() => Panels(100_000, 200, 16_384);

    private static IEnumerable<(int, Behaviour)> Panels(int first, int count, int mostAssignments) =>
        from number in Enumerable.Range(first, count)
        let netlist = RandomPanels.Panel(number, mostAssignments)
        select (number, new Behaviour(netlist, new DiagramTable()));
}
