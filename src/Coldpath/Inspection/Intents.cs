using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>An intent line and what came of it.</summary>
/// <param name="Intent">The line.</param>
/// <param name="Span">Where it is written.</param>
/// <param name="Verdict">The answer with its reason.</param>
public sealed record JudgedIntent(Intent Intent, Span Span, Verdict Verdict)
{
    public bool Refuted => Verdict.Outcome == Outcome.Refuted;
    public bool Vacuous => Verdict.Outcome == Outcome.Vacuous;
    public bool Proved => Verdict.Outcome == Outcome.Proved;

    /// <summary>Tags that the line speaks of, the load first.</summary>
    public required IReadOnlyList<string> Devices { get; init; }

    /// <summary>As written, blanks evened out.</summary>
    public string Sentence =>
        string.Join(' ', Span.Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
