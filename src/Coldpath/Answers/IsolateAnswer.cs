using System.Numerics;

namespace Coldpath.Answers;

/// <summary>What to open so that targets are dead whatever else happens.</summary>
public sealed record IsolateAnswer
{
    public required string Panel { get; init; }
    public string Rules { get; init; } = "IEC";

    /// <summary>False when something the engine does not decide matters; no set is then called enough on its account.</summary>
    public bool Complete { get; init; } = true;
    public IReadOnlyList<string> Incomplete { get; init; } = [];

    /// <summary>Devices, terminals or places, as asked.</summary>
    public required IReadOnlyList<string> Targets { get; init; }

    /// <summary>The best of the minimal sets, best first; where they are not counted one of them, best or not.</summary>
    public IReadOnlyList<IsolatingSet> Sets { get; init; } = [];

    /// <summary>Exact number of minimal sets; null when the search was bounded.</summary>
    public BigInteger? Count { get; init; }

    /// <summary>There are more sets than are told.</summary>
    public bool Cut => Count > Sets.Count;

    /// <summary>It is certain that no set isolates.</summary>
    public bool IsImpossible => Count?.IsZero == true;

    /// <summary>How the target stays live with every isolating device open, when no set exists.</summary>
    public PointReach? Stays { get; init; }

    /// <summary>The verdict on a set of the asker's own; null when none was given.</summary>
    public OwnSet? Have { get; init; }

    /// <summary>What may be live in the same place after the best set is opened.</summary>
    public IReadOnlyList<PointReach> StaysLive { get; init; } = [];

    /// <summary>Neutrals, protective conductors and bonds that must be whole for the target to be dead.</summary>
    public IReadOnlyList<WholeOnly> WholeOnly { get; init; } = [];

    /// <summary>Unseen and untraced parts that the answer rests on, one sentence each.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];
    public IReadOnlyList<string> Assumed { get; init; } = [];
}
