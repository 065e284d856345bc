using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// One move of one variable with the states it starts from. Every set lies within "the variable has the value
/// <paramref name="From"/>", and a move whose result breaks a constraint is in none but <see cref="Blocked"/>.
/// </summary>
/// <param name="Variable">Its number in the netlist.</param>
/// <param name="From">Number of the value before.</param>
/// <param name="To">Number of the value after; never <paramref name="From"/>.</param>
/// <param name="Cause">Who or what makes it.</param>
public sealed record Transition(int Variable, int From, int To, Cause Cause)
{
    /// <summary>Where it is sure to come, if nothing else comes first.</summary>
    public required Diagram Certain { get; init; }

    /// <summary>Where an uncertain coil leaves it open whether it comes.</summary>
    public required Diagram Uncertain { get; init; }

    /// <summary>Those certain ones in which only the solver's volts make it so.</summary>
    public Diagram Solved { get; init; } = Diagram.False;

    /// <summary>Where a short leaves it open: a supply that collapses for as long as the short stands.</summary>
    public required Diagram Shorted { get; init; }

    /// <summary>Where it is certain but for a constraint.</summary>
    public required Diagram Blocked { get; init; }

    /// <summary>Moves that follow by themselves and at once.</summary>
    public bool IsUrgent => Cause is Cause.Settle or Cause.Short;
}
