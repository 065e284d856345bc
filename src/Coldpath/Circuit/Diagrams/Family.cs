namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// A family of sets in a <see cref="FamilyTable"/>: the number of a node. Two families of one table hold the same sets
/// exactly when they are equal.
/// </summary>
public readonly record struct Family(int Node)
{
    /// <summary>No set at all.</summary>
    public static readonly Family None = new(0);

    /// <summary>One set, the empty one.</summary>
    public static readonly Family Nothing = new(1);

    public bool IsNone => Node == 0;
    public bool IsConstant => Node <= 1;
}
