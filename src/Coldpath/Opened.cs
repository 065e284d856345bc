using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath;

/// <summary>A description read, bound and, when nothing is wrong with it, ready to be asked.</summary>
internal sealed class Opened
{
    private Opened(SourceText source, BoundResult bound, Evidence? evidence)
    {
        Source = source;
        Bound = bound;
        Evidence = evidence;
    }

    public SourceText Source { get; }
    public BoundResult Bound { get; }

    /// <summary>Null when the description cannot be searched: see the findings.</summary>
    public Evidence? Evidence { get; }

    public IReadOnlyList<Finding> Findings => Bound.Findings;

    public static Opened From(SourceText source, CancellationToken stop)
    {
        var bound = PanelBinder.Bind(PanelParser.Parse(source), KindLibrary.Standard);
        if (bound.Netlist is not { } netlist)
            return new(source, bound, null);
        return new(source, bound, new Evidence(source, bound.Panel, netlist, BehaviourOf(netlist, stop)));
    }

    /// <summary>With uncertain coils judged, where there is room for the search that this takes.</summary>
    private static Behaviour BehaviourOf(Netlist netlist, CancellationToken stop)
    {
        var whole = netlist.WithoutFailures();
        return new Behaviour(whole, new DiagramTable(cancellation: stop)).Sharpened()
            ?? new Behaviour(whole, new DiagramTable(cancellation: stop));
    }
}
