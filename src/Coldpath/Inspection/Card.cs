using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>The family a check belongs to; its first letter begins the code.</summary>
public enum Family
{
    EnergisedPaths,
    Protection,
    Isolation,
    ControlLogic,
    Description,
    Intent,
    Failures,
}

/// <summary>
/// What a check is, in words: the text that <c>explain</c> prints, the rule of a SARIF file, the name a waiver uses.
/// </summary>
public sealed record Card
{
    /// <summary>Family letter and number, such as "E101". Never reused.</summary>
    public required string Code { get; init; }

    /// <summary>States the defect and reads well after "waive": "unprotected-short".</summary>
    public required string Name { get; init; }
    public required Family Family { get; init; }

    /// <summary>The severity of its worst finding; a finding may be milder.</summary>
    public required Severity Severity { get; init; }

    /// <summary>One sentence: what is found.</summary>
    public required string Title { get; init; }

    /// <summary>Why it matters to somebody at the panel.</summary>
    public required string Why { get; init; }

    /// <summary>Standard and clause, or "common practice".</summary>
    public required string Reference { get; init; }

    /// <summary>The change to make.</summary>
    public required string Remedy { get; init; }

    /// <summary>What the check does not see; null when it sees all.</summary>
    public string? Limits { get; init; }

    /// <summary>Examples: the good one gives nothing at all, the bad one exactly this finding.</summary>
    public required Example Example { get; init; }
}

/// <summary>A base panel and the lines of it that make the difference. The good lines stand in the base as they are.</summary>
/// <param name="Base">Name of a panel among <see cref="BasePanels"/>.</param>
/// <param name="Good">Consecutive or scattered whole lines of the base.</param>
/// <param name="Bad">What takes the place of each good line, one for one; a line may hold several, or none.</param>
public sealed record Example(string Base, IReadOnlyList<string> Good, IReadOnlyList<string> Bad)
{
    public Example(string @base, string good, string bad)
        : this(@base, [good], [bad]) { }

    public string GoodPanel => BasePanels.Text(Base);

    /// <exception cref="InvalidOperationException">A good line does not stand in the base exactly once.</exception>
    public string BadPanel
    {
        get
        {
            var lines = GoodPanel.Split('\n').ToList();
            foreach (var (good, bad) in Good.Zip(Bad))
            {
                var at = lines.FindIndex(line => Same(line, good));
                if (at < 0 || lines.FindIndex(at + 1, line => Same(line, good)) >= 0)
                    throw new InvalidOperationException($"'{good}' must stand once in base panel '{Base}'");
                lines[at] = bad;
            }
            return string.Join('\n', lines);
        }
    }

    private static bool Same(string line, string wanted) =>
        line.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .SequenceEqual(wanted.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
