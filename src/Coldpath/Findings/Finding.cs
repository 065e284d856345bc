namespace Coldpath.Findings;

/// <summary>How bad a finding is, worst last.</summary>
public enum Severity
{
    Note,
    Caution,
    Defect,
    Danger,
}

/// <summary>Another place that matters to a finding, with what is to be seen there.</summary>
public sealed record Label(Span Span, string Text);

/// <summary>One step of a story: what is operated or what follows by itself, as a sentence without a full stop.</summary>
/// <param name="Text">"turn S1 to HAND", "K3 pulls in".</param>
/// <param name="Variable">The netlist variable that changes; null for a closing observation.</param>
/// <param name="Value">Its new value.</param>
/// <param name="Mover">Who or what moves it: "operator", "settle", "trip" and so on.</param>
public sealed record StoryStep(
    string Text,
    string? Variable = null,
    string? Value = null,
    string? Mover = null
);

/// <summary>
/// Something the tool has to say about a place in a description. Past the parser every finding names a device or a
/// point.
/// </summary>
public sealed record Finding
{
    /// <summary>Stable code such as "E014"; printed with <see cref="Name"/>, either is accepted.</summary>
    public required string Code { get; init; }

    /// <summary>Kebab-case name that reads well after "waive".</summary>
    public required string Name { get; init; }
    public required Severity Severity { get; init; }

    /// <summary>Lower case, no full stop, stands alone, names the culprit.</summary>
    public required string Message { get; init; }
    public required Span Location { get; init; }
    public IReadOnlyList<string> Devices { get; init; } = [];
    public IReadOnlyList<string> Points { get; init; } = [];
    public IReadOnlyList<Label> Related { get; init; } = [];
    public IReadOnlyList<StoryStep> Story { get; init; } = [];

    /// <summary>The conducting path, as points and devices from source to victim.</summary>
    public IReadOnlyList<string> Path { get; init; } = [];

    /// <summary>Standard and clause, or "common practice".</summary>
    public string? Reference { get; init; }

    /// <summary>The change to make.</summary>
    public string? Remedy { get; init; }

    /// <summary>The story rests on a coil whose pull-in is uncertain, and there is none without it.</summary>
    public bool Uncertain { get; init; }

    /// <summary>The reason of the waiver that covers it, null when none does.</summary>
    public string? Waived { get; init; }
}
