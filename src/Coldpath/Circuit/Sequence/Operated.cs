using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>What came of an operation, or of letting the circuit settle.</summary>
/// <param name="Asked">The operation; null when nothing was operated.</param>
/// <param name="Steps">The moves made and those that followed, in order.</param>
/// <param name="State">The state in the end.</param>
/// <param name="Refusal">Why the variable did not take the value; null when it did.</param>
public sealed record Operated(Operation? Asked, IReadOnlyList<Step> Steps, State State, Refusal? Refusal)
{
    /// <summary>On the way the order in which armatures fall decided; the first declared was taken to be first.</summary>
    public bool Raced { get; init; }

    /// <summary>The circuit does not come to rest: the state is one of those it runs through.</summary>
    public bool Chatters { get; init; }
}

/// <summary>Why an operation could not be made.</summary>
public enum Refusal
{
    /// <summary>No such variable or value.</summary>
    Unknown,

    /// <summary>The variable has no moves that lead to the value.</summary>
    NoWay,

    /// <summary>The condition of a move on the way does not hold.</summary>
    NotNow,

    /// <summary>An interlock or key forbids it.</summary>
    Interlocked,

    /// <summary>A move on the way was undone at once.</summary>
    Undone,
}
