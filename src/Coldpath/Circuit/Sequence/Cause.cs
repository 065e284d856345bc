namespace Coldpath.Circuit.Sequence;

/// <summary>Who or what makes a move; a <see cref="Wiring.Mover"/>, or a short-circuit device that operates.</summary>
public enum Cause
{
    Operator,
    Process,
    Settle,
    Short,
    Delay,
    Trip,
    Condition,
    Failure,
}
