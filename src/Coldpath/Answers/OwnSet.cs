namespace Coldpath.Answers;

/// <summary>Whether the devices someone means to open are enough.</summary>
public sealed record OwnSet
{
    public required IReadOnlyList<string> Devices { get; init; }
    public required Verdict Enough { get; init; }

    /// <summary>Devices of the set that are not isolating devices and therefore do not count, each with the reason.</summary>
    public IReadOnlyList<string> NotIsolating { get; init; } = [];

    /// <summary>How the target stays live; null when the set is enough.</summary>
    public PointReach? Stays { get; init; }

    /// <summary>The positions in which it does, devices that matter only: "K3" with "welded".</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Witness { get; init; } = [];
}
