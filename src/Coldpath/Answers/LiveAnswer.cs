using Coldpath.Findings;

namespace Coldpath.Answers;

/// <summary>What is live once the circuit has settled after some operations.</summary>
public sealed record LiveAnswer
{
    public required string Panel { get; init; }
    public string Rules { get; init; } = "IEC";

    /// <summary>False when something the engine does not decide matters; nothing is then said to be dead on its account.</summary>
    public bool Complete { get; init; } = true;
    public IReadOnlyList<string> Incomplete { get; init; } = [];

    /// <summary>Where it began: "powered" or "rest".</summary>
    public required string Start { get; init; }

    /// <summary>The operations and what followed by itself.</summary>
    public IReadOnlyList<StoryStep> Steps { get; init; } = [];
    public required Settled Settled { get; init; }

    /// <summary>Every variable and its value, in declared order.</summary>
    public required IReadOnlyList<KeyValuePair<string, string>> State { get; init; }

    /// <summary>Every point, in declared order.</summary>
    public required IReadOnlyList<PointReach> Points { get; init; }

    /// <summary>What each load does: "M1" with "runs forward", "stands live", "single-phasing", "dead".</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Loads { get; init; } = [];

    /// <summary>Unseen and untraced parts that the answer rests on, one sentence each.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];
    public IReadOnlyList<string> Assumed { get; init; } = [];
}
