using Coldpath.Circuit.Sequence;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection;

/// <summary>A search in which one of a few failures of a sort may happen, made when first asked for.</summary>
/// <param name="sort">Of what sort they are.</param>
/// <param name="search">Makes it.</param>
public sealed class FailureSearch(FailureSort sort, Func<Behaviour> search)
{
    private readonly Lazy<Behaviour> behaviour = new(search);

    public FailureSort Sort => sort;

    public Behaviour Behaviour => behaviour.Value;
}
