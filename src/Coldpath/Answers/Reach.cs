namespace Coldpath.Answers;

/// <summary>How a point is live, worst news last but one: stored sources stay after everything is opened.</summary>
public enum Reach
{
    Dead,

    /// <summary>Through closed conductors, contacts and the like.</summary>
    Solid,

    /// <summary>Through a load, a series element or leakage.</summary>
    Load,

    /// <summary>Through a coupling, against the intended direction.</summary>
    Backfeed,

    /// <summary>From a charged or turning store.</summary>
    Stored,

    /// <summary>Not decided, only in an answer that is not complete: to be taken as live.</summary>
    Unknown,
}
