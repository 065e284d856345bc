using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection;

/// <summary>A search in which a few parts may fail, made when first asked for.</summary>
public sealed class FailureSearch
{
    private readonly Lazy<Behaviour> behaviour;

    /// <param name="netlist">In which just these can fail.</param>
    /// <param name="most">How many of them may at a time.</param>
    /// <param name="stop">Ends the search early.</param>
    public FailureSearch(Netlist netlist, int most, CancellationToken stop)
    {
        behaviour = new(() => new(netlist, new DiagramTable(cancellation: stop), most));
        Sorts = SortsOf(netlist);
    }

    /// <param name="made">A search that is there already.</param>
    public FailureSearch(Behaviour made)
    {
        behaviour = new(made);
        Sorts = SortsOf(made.Netlist);
    }

    /// <summary>Of what sorts its failures are.</summary>
    public IReadOnlySet<FailureSort> Sorts { get; }

    public Behaviour Behaviour => behaviour.Value;

    private static HashSet<FailureSort> SortsOf(Netlist netlist)
    {
        var sorts = new FailureSorts(netlist);
        return [.. netlist.Variables.Where(v => v.Kind == VariableKind.Failure).Select(sorts.Of)];
    }
}
