using System.Diagnostics;
using System.Globalization;
using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Trials;

/// <summary>What each kind of question costs on a panel of the usual size, in time and in diagram nodes.</summary>
internal static class ConductionTrial
{
    private const int Times = 7;

    public static void Run()
    {
        foreach (var failures in Enum.GetValues<Failures>())
        foreach (var feeders in new[] { 1, 2, 4, 8 })
            Measure(
                $"{feeders} feeders, failures {failures}",
                TypicalPanel.Build(feeders, failures != Failures.None),
                failures
            );
        foreach (var file in Samples())
        {
            var source = new SourceText(file, File.ReadAllText(file));
            if (Opened.From(source, default).Evidence is not { } evidence)
                continue;
            Measure(Path.GetFileName(file), evidence.Netlist.WithoutFailures(), Failures.None);
            Measure($"{Path.GetFileName(file)}, failures free", evidence.Netlist, Failures.Free);
        }
    }

    /// <summary>The sound panels of the repository this runs in.</summary>
    private static IEnumerable<string> Samples()
    {
        for (
            var folder = Environment.CurrentDirectory;
            folder is not null;
            folder = Path.GetDirectoryName(folder)
        )
            if (Directory.Exists(Path.Combine(folder, "panels")))
                return Directory
                    .EnumerateFiles(Path.Combine(folder, "panels"), "*.panel")
                    .Order(StringComparer.Ordinal);
        return [];
    }

    private static void Measure(string name, Netlist netlist, Failures failures)
    {
        var steps = Array.Empty<Cost>();
        var bits = 0;
        for (var i = 0; i < Times; i++)
        {
            var states = new StateSpace(netlist);
            bits = states.Levels.Count;
            var last = Ask(netlist, states, Within(netlist, states, failures)).ToArray();
            steps = i == 0 ? last : [.. steps.Zip(last, (a, b) => a.Milliseconds < b.Milliseconds ? a : b)];
        }
        Console.WriteLine($"{name}: {netlist.Nets.Count} nets, {netlist.Elements.Count} links, {bits} bits");
        foreach (var step in steps)
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"        {step.Name, -22} {step.Milliseconds, 9:0.00} ms {step.Made, 8} made {step.Nodes, 7} kept"
                )
            );
    }

    private static IEnumerable<Cost> Ask(Netlist netlist, StateSpace states, Diagram within)
    {
        var network = new Network(netlist, states, within: within);
        var moves = netlist.Variables.SelectMany(v => v.Moves).ToArray();
        var heaters = netlist.Elements.Where(e => e.Type == ElementType.Thermal).ToArray();
        yield return Step("moves", () => moves.Select(m => network.Of(m.When)));
        yield return Step("carries, all heaters", () => heaters.Select(e => network.Carries(e.Id)));
        yield return Step("live, all nets", () => netlist.Nets.Select(network.Live));
        yield return Step("short", () => [network.AnyShort()]);
        yield return Step("runs", () => netlist.Loads.Select(l => network.Runs(l.Name)));
        yield return Step("uncertain coils", () => moves.Select(m => network.Of(m.May)));

        Cost Step(string name, Func<IEnumerable<Diagram>> ask)
        {
            var before = states.Table.NodesMade;
            var start = Stopwatch.GetTimestamp();
            var answers = ask().ToArray();
            var spent = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            return new(name, spent, states.Table.NodesMade - before, states.Table.NodeCount(answers));
        }
    }

    private static Diagram Within(Netlist netlist, StateSpace states, Failures failures) =>
        failures == Failures.Free
            ? Diagram.True
            : states.Table.AllOf(
                netlist
                    .Variables.Where(v => v.Kind == VariableKind.Failure)
                    .Select(v => states.Is(v.Name, v.Rest))
            );

    private enum Failures
    {
        None,
        Excluded,
        Free,
    }

    private sealed record Cost(string Name, double Milliseconds, int Made, int Nodes);
}
