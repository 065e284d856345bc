namespace Coldpath.Answers;

/// <summary>How the circuit came to rest.</summary>
public enum Settled
{
    Steady,

    /// <summary>It never does: it goes round a cycle of states, and the answer holds for one or more of them.</summary>
    Chatter,

    /// <summary>A short lasts.</summary>
    Short,
}
