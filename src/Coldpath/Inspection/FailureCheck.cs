using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>A check that lets one part fail.</summary>
public abstract class FailureCheck : Check
{
    public sealed override IEnumerable<Finding> Look(Evidence e) => e.Failures == 0 ? [] : Search(e);

    /// <summary>Looks with one failure allowed or more.</summary>
    protected abstract IEnumerable<Finding> Search(Evidence e);

    public sealed override string? Lacks(Evidence e) =>
        e.Failures == 0 ? "no failure was reckoned with" : null;
}
