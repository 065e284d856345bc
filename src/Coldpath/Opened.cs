using Coldpath.Circuit.Sequence;
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

    /// <param name="source">The description.</param>
    /// <param name="stop">Ends searches early.</param>
    /// <param name="failures">How many failures the checks reckon with.</param>
    /// <param name="names">What is asked about: decides which part of a site is followed.</param>
    public static Opened From(
        SourceText source,
        CancellationToken stop,
        int failures = 0,
        IReadOnlyCollection<string>? names = null
    ) => From(PanelParser.Parse(source), source, stop, failures, names);

    public static Opened From(
        ParseResult parsed,
        SourceText source,
        CancellationToken stop,
        int failures = 0,
        IReadOnlyCollection<string>? names = null
    )
    {
        var bound = Described.Bind(parsed, names ?? []);
        if (bound.Netlist is not { } netlist)
            return new(source, bound, null);
        var behaviour = Behaviour.Judged(netlist.WithoutFailures(), stop);
        return new(source, bound, new Evidence(source, bound.Panel, netlist, behaviour, failures, stop));
    }
}
