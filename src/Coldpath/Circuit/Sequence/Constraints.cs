using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Interlocks and keys: a move whose result breaks one does not exist. The failures that may happen are limited in
/// the same way.
/// </summary>
internal sealed class Constraints
{
    private readonly StateSpace space;
    private readonly Dictionary<(int Variable, int To), Diagram> allowed = [];

    public Constraints(Netlist netlist, StateSpace space)
    {
        this.space = space;
        Hold = space.Table.AllOf(netlist.Constraints.Select(c => space.Guard(c.Holds)));
    }

    /// <summary>States that break none.</summary>
    public Diagram Hold { get; }

    /// <summary>States in which the variable may take the value, whatever value it has.</summary>
    public Diagram Allow(int variable, int to)
    {
        if (!allowed.TryGetValue((variable, to), out var states))
        {
            var held = space.Failures is null ? Hold : space.Table.And(Hold, space.Domain);
            states = space.Table.AndExists(held, space.Code(variable, to), space.Bits(variable));
            allowed.Add((variable, to), states);
        }
        return states;
    }
}
