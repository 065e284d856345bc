using System.Diagnostics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Trials;

/// <summary>
/// What failures cost: for every sample panel the states reachable with none, one and two of them, with time in
/// milliseconds and diagram nodes.
/// </summary>
internal static class FailureTrial
{
    public static void Run()
    {
        Console.WriteLine($"{"panel", -36} {"failures", 8} {"ms", 9} {"nodes", 12} {"states", 24}");
        foreach (var file in Directory.GetFiles("panels", "*.panel").Order(StringComparer.Ordinal))
            Measure(new SourceText(file, File.ReadAllText(file)));
    }

    private static void Measure(SourceText source)
    {
        var netlist = Opened.From(source, CancellationToken.None).Evidence!.Whole.Netlist;
        var modes = netlist.Variables.Count(v => v.Kind == VariableKind.Failure);
        for (var most = 0; most <= 2; most++)
        {
            var (table, watch) = (new DiagramTable(), Stopwatch.StartNew());
            var behaviour = new Behaviour(most == 0 ? netlist.WithoutFailures() : netlist, table, most);
            var states = behaviour.Space.Count(behaviour.Reachable);
            Console.WriteLine(
                $"{Path.GetFileName(source.Name), -36} {$"{most} of {modes}", 8} {watch.Elapsed.TotalMilliseconds, 9:0.0} {table.NodesMade, 12:N0} {states, 24:N0}"
            );
        }
    }
}
