using Coldpath.Findings;

namespace Coldpath.Notation;

/// <summary>The findings of one reading, capped: the last one kept says that there are more.</summary>
internal sealed class Complaints
{
    private readonly List<Finding> findings = [];

    public bool IsFull => findings.Count >= Limits.Findings;

    public void Add(Finding finding)
    {
        if (findings.Count < Limits.Findings - 1)
            findings.Add(finding);
        else if (!IsFull)
            findings.Add(Wording.TooManyFindings(finding.Location));
    }

    /// <summary>In the order of the text.</summary>
    public IReadOnlyList<Finding> InOrder() => [.. findings.OrderBy(f => f.Location.Start)];
}

/// <summary>The first mistake of one line: a line gives one finding and no more.</summary>
internal sealed class LineReport
{
    public Finding? Mistake { get; private set; }

    public void Report(Finding mistake) => Mistake ??= mistake;
}
