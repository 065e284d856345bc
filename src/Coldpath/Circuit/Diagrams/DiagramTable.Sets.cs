namespace Coldpath.Circuit.Diagrams;

/// <summary>Families of sets: an assignment stands for the set of levels that are true in it.</summary>
public sealed partial class DiagramTable
{
    /// <summary>All sets that contain a set of the family.</summary>
    public Diagram UpwardClosure(Diagram f) => new(Upward(f.Edge));

    /// <summary>All sets that a set of the family contains.</summary>
    public Diagram DownwardClosure(Diagram f) => new(Downward(f.Edge));

    /// <summary>An empty table of families with this table's budget and cancellation.</summary>
    internal FamilyTable Families() => new(budget, cancellation);

    /// <summary>The budget counts for what is held beside the nodes too.</summary>
    /// <param name="held">How much that is.</param>
    internal bool Affords(int held)
    {
        cancellation.ThrowIfCancellationRequested();
        return held < budget;
    }

    /// <summary>An empty table with this table's budget and cancellation.</summary>
    internal DiagramTable Another() => new(budget, capacity: 256, cancellation);

    private int Upward(int f)
    {
        if (f <= False)
            return f;
        if (Known(f, f, Operation.Upward, out var known))
            return known;
        var low = Upward(LowOf(f));
        return Remember(f, f, Operation.Upward, Make(LevelOf(f), low, Or(low, Upward(HighOf(f)))));
    }

    private int Downward(int f)
    {
        if (f <= False)
            return f;
        if (Known(f, f, Operation.Downward, out var known))
            return known;
        var high = Downward(HighOf(f));
        return Remember(f, f, Operation.Downward, Make(LevelOf(f), Or(Downward(LowOf(f)), high), high));
    }
}
