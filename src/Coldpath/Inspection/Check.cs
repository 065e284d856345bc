using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>One question put to the evidence. A check sees nothing else and depends on no other check.</summary>
public abstract class Check
{
    public abstract Card Card { get; }

    /// <summary>Every defect that the evidence shows, each once, in declared order of the culprit.</summary>
    public abstract IEnumerable<Finding> Look(Evidence e);

    /// <summary>What the description does not say, so that the check could be made only in part; null when nothing.</summary>
    public virtual string? Lacks(Evidence e) => null;
}
