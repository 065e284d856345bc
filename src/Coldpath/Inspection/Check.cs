using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>One question put to the evidence. A check sees nothing else and depends on no other check.</summary>
public abstract class Check
{
    public abstract Card Card { get; }

    /// <summary>Every defect that the evidence shows, each once, in declared order of the culprit.</summary>
    public abstract IEnumerable<Finding> Look(Evidence e);

    /// <summary>Why the check cannot be made on this panel, or null.</summary>
    public virtual string? CannotBeMade(Evidence e) => null;
}
