namespace Coldpath.Circuit.Diagrams;

/// <summary>Families of sets: an assignment stands for the set of levels that are true in it.</summary>
public sealed partial class DiagramTable
{
    /// <summary>All sets that contain a set of the family.</summary>
    public Diagram UpwardClosure(Diagram f) => new(Upward(f.Edge));

    /// <summary>An empty table of families with this table's budget and cancellation.</summary>
    internal FamilyTable Families() => new(budget, cancellation);

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
}
