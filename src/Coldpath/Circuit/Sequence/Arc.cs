using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>Part of a relation: from each of the source states, the variable takes the value.</summary>
/// <param name="Source">The states it starts from; in each the variable has another value.</param>
/// <param name="Variable">Number of the variable that changes.</param>
/// <param name="To">Number of its new value.</param>
/// <param name="Bits">The cube that hides the variable.</param>
/// <param name="Code">The variable has its new value.</param>
internal readonly record struct Arc(Diagram Source, int Variable, int To, Diagram Bits, Diagram Code)
{
    public static Arc Of(StateSpace space, Transition t, Diagram source) =>
        new(source, t.Variable, t.To, space.Bits(t.Variable), space.Code(t.Variable, t.To));
}
