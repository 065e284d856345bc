using Coldpath.Findings;
using Coldpath.Notation;

namespace Coldpath.Panels.Binding;

/// <summary>What binding has to say; anything said means that the panel cannot be used.</summary>
internal sealed class BindingFindings
{
    /// <summary>
    /// Past this many nothing more is taken down: those that are printed are the first of these in the order of the text.
    /// </summary>
    private const int Kept = 10 * Limits.Findings;

    private readonly List<Finding> found = [];
    private readonly HashSet<(string, string, Span)> said = [];

    /// <summary>Nothing that was said keeps the panel from being used.</summary>
    public bool AreHarmless { get; private set; } = true;

    /// <summary>The panel cannot be used, and whatever else is said of it will not be read.</summary>
    public bool AreTooMany => !AreHarmless && found.Count >= Kept;

    /// <summary>How much was said so far.</summary>
    public int Count => found.Count;

    /// <summary>In the order of the text; past the limit the last says that there are more.</summary>
    public IReadOnlyList<Finding> InOrder
    {
        get
        {
            var ordered = found
                .OrderBy(f => f.Location.Start)
                .ThenBy(f => f.Code, StringComparer.Ordinal)
                .ToList();
            return ordered.Count <= Limits.Findings
                ? ordered
                :
                [
                    .. ordered.Take(Limits.Findings - 1),
                    Wording.TooManyFindings(ordered[Limits.Findings].Location),
                ];
        }
    }

    /// <summary>What is said again of the same place is said once.</summary>
    public void Add(Finding finding)
    {
        AreHarmless &= finding.Severity < Severity.Defect;
        if (found.Count < Kept && said.Add((finding.Code, finding.Message, finding.Location)))
            found.Add(finding);
    }

    /// <summary>"did you mean K1?"; null when no name is near, or when so much was said that nobody will read on.</summary>
    public string? DidYouMean(string written, IEnumerable<string> candidates) =>
        found.Count < Limits.Findings && SpellChecker.Nearest(written, candidates) is { } near
            ? $"did you mean {near}?"
            : null;

    public void Add(IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
            Add(finding);
    }
}

/// <summary>One sort of binding finding.</summary>
internal sealed record Complaint(string Code, string Name)
{
    public static readonly Complaint UnknownName = new("P001", "unknown-name");
    public static readonly Complaint NameClash = new("P002", "name-clash");
    public static readonly Complaint Header = new("P003", "header-unclear");
    public static readonly Complaint UnknownPart = new("P004", "unknown-part");
    public static readonly Complaint UnknownTerminal = new("P005", "unknown-terminal");
    public static readonly Complaint AmbiguousTerminal = new("P006", "ambiguous-terminal");
    public static readonly Complaint WidthsDiffer = new("P007", "widths-differ");
    public static readonly Complaint NoSuchSide = new("P008", "no-such-side");
    public static readonly Complaint PassedTwice = new("P009", "passed-twice");
    public static readonly Complaint CoilOrContact = new("P010", "coil-or-contact");
    public static readonly Complaint ContactConflict = new("P011", "contact-conflict");
    public static readonly Complaint UnknownState = new("P012", "unknown-state");
    public static readonly Complaint UnfitIntent = new("P013", "unfit-intent");
    public static readonly Complaint UnknownKind = new("P015", "unknown-kind");
    public static readonly Complaint UnfitMention = new("P016", "unfit-mention");
    public static readonly Complaint NeutralMisplaced = new("P014", "neutral-misplaced");

    public Finding At(Span span, string message, string? device = null, string? remedy = null) =>
        new()
        {
            Code = Code,
            Name = Name,
            Severity = Severity.Defect,
            Message = message,
            Location = span,
            Devices = device is null ? [] : [device],
            Remedy = remedy,
        };
}
