using System.Diagnostics;
using Coldpath.Answers;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Tests.Answers.Meshes;

namespace Coldpath.Trials;

/// <summary>
/// What meshes of three-pole disconnects cost: how many isolating sets there are, the nodes of the diagram that holds
/// them and of all diagrams on the way, milliseconds for the sets alone and for the whole answer from the text on.
/// </summary>
internal static class MeshTrial
{
    private static readonly MeshNetwork[] Networks =
    [
        MeshNetwork.Bridge(),
        MeshNetwork.Ring(100),
        MeshNetwork.Ladder(34),
        MeshNetwork.Complete(10),
        .. Enumerable.Range(3, 6).Select(side => MeshNetwork.Grid(side, side)),
        MeshNetwork.Grid(7, 7).Shuffled(1),
        MeshNetwork.Grid(4, 14),
    ];

    public static void Run()
    {
        Console.WriteLine(
            $"{"network", -20} {"switches", 8} {"sets", 24} {"nodes", 10} {"made", 11} {"sets ms", 9} {"all ms", 9}"
        );
        foreach (var network in Networks)
            Measure(network);
    }

    private static void Measure(MeshNetwork network)
    {
        var source = new SourceText(network.Name, network.Text());
        var watch = Stopwatch.StartNew();
        var answer = Workbench.Isolate(source, ["M1"], null, CancellationToken.None).Answer!;
        var whole = watch.Elapsed.TotalMilliseconds;
        var (nodes, made, alone) = Sets(source);
        Console.WriteLine(
            $"{network.Name, -20} {network.Switches.Count, 8} {answer.Count, 24:N0} {nodes, 10:N0} {made, 11:N0} {alone, 9:N0} {whole, 9:N0}"
        );
    }

    private static (int Nodes, int Made, double Milliseconds) Sets(SourceText source)
    {
        var netlist = Opened.From(source, CancellationToken.None).Evidence!.Whole.Netlist;
        var table = new DiagramTable(capacity: 1 << 20);
        var watch = Stopwatch.StartNew();
        var targets = Targets.Find(netlist, "M1").Select(p => p.Net);
        var sets = new IsolatingSets(new Isolators(netlist, table), targets);
        return (sets.Nodes, table.NodesMade, watch.Elapsed.TotalMilliseconds);
    }
}
