using Coldpath.Wiring;

namespace Coldpath.Circuit.States;

/// <summary>One value for each variable: the value's index in the variable's list, in declared order of variables.</summary>
public sealed record State(EquatableList<int> Values)
{
    public State(IEnumerable<int> values)
        : this(new EquatableList<int>(values)) { }

    public int this[int variable] => Values[variable];

    /// <summary>The same state but for one variable.</summary>
    public State With(int variable, int value) => new(Values.Select((old, i) => i == variable ? value : old));
}
