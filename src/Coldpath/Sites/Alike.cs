namespace Coldpath.Sites;

/// <summary>Sources of one sort that arrive in one way: nothing but their names tells them apart.</summary>
/// <param name="members">One or more, by name.</param>
internal sealed class Alike(IReadOnlyList<Source> members)
{
    public IReadOnlyList<Source> Members => members;
    public Source First => members[0];
}

/// <summary>Makes the same object of the same members, so that outlines are quickly compared.</summary>
internal sealed class AlikePool : IEqualityComparer<IReadOnlyList<Source>>
{
    private readonly Dictionary<IReadOnlyList<Source>, Alike> known;

    public AlikePool() => known = new(this);

    public Alike Of(IEnumerable<Source> members)
    {
        Source[] sorted = [.. members.OrderBy(s => s.Name, StringComparer.Ordinal)];
        if (!known.TryGetValue(sorted, out var alike))
            known.Add(sorted, alike = new(sorted));
        return alike;
    }

    bool IEqualityComparer<IReadOnlyList<Source>>.Equals(
        IReadOnlyList<Source>? x,
        IReadOnlyList<Source>? y
    ) => x!.SequenceEqual(y!);

    int IEqualityComparer<IReadOnlyList<Source>>.GetHashCode(IReadOnlyList<Source> members) =>
        HashCode.Combine(members.Count, members[0], members[^1]);
}
