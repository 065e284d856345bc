using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>
/// What a check is, in words: the text of <c>explain</c>, the rule of a SARIF log and the first two tests of the check
/// all come from here.
/// </summary>
public sealed record Card
{
    /// <summary>Stable, such as "S012".</summary>
    public required string Code { get; init; }

    /// <summary>Kebab-case; states the defect and reads well after "waive".</summary>
    public required string Name { get; init; }

    /// <summary>"energised paths", "protection", "isolation", "control logic", "description".</summary>
    public required string Family { get; init; }

    /// <summary>The severity its findings have unless one says otherwise.</summary>
    public required Severity Severity { get; init; }

    /// <summary>One line, lower case, no full stop.</summary>
    public required string Title { get; init; }

    /// <summary>What it means and why it matters; whole sentences.</summary>
    public required string Why { get; init; }

    /// <summary>Standard and clause, or "common practice".</summary>
    public required string Reference { get; init; }

    /// <summary>How to put it right.</summary>
    public required string Remedy { get; init; }

    /// <summary>What the check does not see; null when nothing needs saying.</summary>
    public string? Limits { get; init; }

    /// <summary>A description that gives exactly this finding; null for findings of the parser.</summary>
    public string? Bad { get; init; }

    /// <summary>The same put right: gives nothing.</summary>
    public string? Good { get; init; }
}
