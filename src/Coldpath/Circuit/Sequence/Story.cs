using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>One move that was made.</summary>
/// <param name="Move">Which.</param>
/// <param name="After">The state it led to.</param>
public sealed record Step(Transition Move, State After);

/// <summary>How a state comes about.</summary>
/// <param name="Behaviour">Of the panel that it happens in.</param>
/// <param name="Start">Where it begins, a state at rest.</param>
/// <param name="Steps">In order; empty when the start itself is meant.</param>
/// <param name="ThroughUncertain">Some step rests on an uncertain coil, and no story without one exists.</param>
public sealed record Story(Behaviour Behaviour, State Start, IReadOnlyList<Step> Steps, bool ThroughUncertain)
{
    /// <summary>What the numbers in the moves and states stand for.</summary>
    public IReadOnlyList<Variable> Variables => Behaviour.Space.Variables;

    public State End => Steps.Count == 0 ? Start : Steps[^1].After;
}
