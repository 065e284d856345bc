using System.Diagnostics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring.Failures;

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
        var modes = netlist.AllFailures().Count;
        for (var most = 0; most <= 1; most++)
        {
            var watch = Stopwatch.StartNew();
            var (parts, nodes, states) = (0, 0L, System.Numerics.BigInteger.Zero);
            foreach (var part in FailureParts.Of(netlist, most))
            {
                var table = new DiagramTable();
                var behaviour = new Behaviour(part, table, most);
                states += behaviour.Space.Count(behaviour.Reachable);
                (parts, nodes) = (parts + 1, nodes + table.NodesMade);
            }
            Console.WriteLine(
                $"{Path.GetFileName(source.Name), -36} {$"{most} of {modes}", 8} {parts, 4} {watch.Elapsed.TotalMilliseconds, 9:0.0} {nodes, 12:N0} {states, 20:N0}"
            );
        }
    }
}
