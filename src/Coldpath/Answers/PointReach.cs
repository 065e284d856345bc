namespace Coldpath.Answers;

/// <summary>Whether a point is live in a state, how, and from where.</summary>
public sealed record PointReach
{
    /// <summary>A terminal or named node, such as "Q1:2".</summary>
    public required string Point { get; init; }
    public required Reach Reach { get; init; }

    /// <summary>Only supplies marked as extra-low voltage reach it.</summary>
    public bool ExtraLow { get; init; }

    /// <summary>Supplies that reach it, such as "MAINS", in declared order; empty when dead.</summary>
    public IReadOnlyList<string> From { get; init; } = [];

    /// <summary>A shortest conducting path, points and devices from source to this point.</summary>
    public IReadOnlyList<string> Path { get; init; } = [];
    public string? Place { get; init; }

    /// <summary>What the verdict hangs on when it is not certain ("K1 may pull in at 60 V"); null beside dead.</summary>
    public string? Doubt { get; init; }
}
