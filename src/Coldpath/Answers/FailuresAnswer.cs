using System.Numerics;
using Coldpath.Circuit.Failures;
using Coldpath.Findings;

namespace Coldpath.Answers;

/// <summary>Which failures suffice for something, and which failures show themselves.</summary>
public sealed record FailuresAnswer
{
    public required string Panel { get; init; }
    public string Rules { get; init; } = "IEC";

    /// <summary>What was asked, as written; null when only the failures themselves were asked for.</summary>
    public string? Question { get; init; }

    /// <summary>A line was asked for, which failures undo; else a condition, which they bring about.</summary>
    public bool IsLine { get; init; }

    /// <summary>The most failures in a combination.</summary>
    public required int Most { get; init; }

    /// <summary>False when the search was cut short, or a combination rests on a coil whose pull-in is uncertain.</summary>
    public bool Complete { get; init; } = true;
    public IReadOnlyList<string> Incomplete { get; init; } = [];

    /// <summary>How many minimal combinations of no more than <see cref="Most"/> there are.</summary>
    public BigInteger Count { get; init; }

    /// <summary>The best of them, each with the failures' names as the netlist has them; one empty: without any failure.</summary>
    public IReadOnlyList<Combination> Sets { get; init; } = [];

    /// <summary>The failures of the sets, or all, each once, in declared order.</summary>
    public IReadOnlyList<FailureTold> Failures { get; init; } = [];

    /// <summary>Unseen and untraced parts that the answer rests on, one sentence each.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];
    public IReadOnlyList<string> Assumed { get; init; } = [];
}

/// <param name="Failures">The variables' names; none: it comes about with nothing failed.</param>
/// <param name="Story">How.</param>
/// <param name="Uncertain">It rests on a coil whose pull-in is uncertain.</param>
public sealed record Combination(
    IReadOnlyList<string> Failures,
    IReadOnlyList<StoryStep> Story,
    bool Uncertain
);

/// <summary>A failure and whether it is seen by itself.</summary>
/// <param name="Variable">Its name in the netlist.</param>
/// <param name="Device">Whose it is.</param>
/// <param name="Says">What happens, in words.</param>
/// <param name="Disclosure">Whether it shows.</param>
public sealed record FailureTold(string Variable, string Device, string Says, Disclosure Disclosure)
{
    /// <summary>What is then not as it would be, a short sentence each; empty unless it shows itself.</summary>
    public IReadOnlyList<string> Shows { get; init; } = [];

    /// <summary>From rest to where it shows.</summary>
    public IReadOnlyList<StoryStep> Story { get; init; } = [];
}
