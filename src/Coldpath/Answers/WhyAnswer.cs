using Coldpath.Findings;

namespace Coldpath.Answers;

/// <summary>Why a point is live: the shortest story that makes it so, or the proof that nothing can.</summary>
public sealed record WhyAnswer
{
    public required string Panel { get; init; }
    public string Rules { get; init; } = "IEC";
    public required string Point { get; init; }
    public required Verdict CanBeLive { get; init; }
    public IReadOnlyList<string> Incomplete { get; init; } = [];

    /// <summary>How it is live at the story's end; null when it never is.</summary>
    public PointReach? Reach { get; init; }

    /// <summary>Empty when it is live at rest already.</summary>
    public IReadOnlyList<StoryStep> Story { get; init; } = [];

    /// <summary>Why nothing can make it live, or what was searched so far; whole sentences.</summary>
    public string? Proof { get; init; }

    /// <summary>Unseen and untraced parts that the answer rests on, one sentence each.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];
    public IReadOnlyList<string> Assumed { get; init; } = [];
}
