using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The reached states by what it takes to get there: fewest moves that something has to make (operator, process,
/// delay, trip, condition), then fewest that follow by themselves. Worked out only as far as stories ask for.
/// </summary>
internal sealed class Layers(DiagramTable table, Reach reach)
{
    /// <summary>By made moves, then by following moves; false where no state is.</summary>
    private readonly List<List<Diagram>> rows = [];
    private List<Diagram> next = [reach.Start];
    private Diagram seen = Diagram.False;

    public Diagram this[int made, int followed] =>
        made < rows.Count && followed < rows[made].Count ? rows[made][followed] : Diagram.False;

    /// <summary>The first layer that meets the target, which must be reached.</summary>
    public (int Made, int Followed) First(Diagram target)
    {
        for (var made = 0; ; made++)
        {
            if (made == rows.Count)
                rows.Add(NextRow());
            var followed = rows[made].FindIndex(layer => table.Meet(layer, target));
            if (followed >= 0)
                return (made, followed);
        }
    }

    private List<Diagram> NextRow()
    {
        if (next.Count == 0)
            throw new InvalidOperationException("no layer meets the target");
        var row = next;
        next = [];
        for (var followed = 0; followed < row.Count; followed++)
        {
            var layer = table.Except(row[followed], seen);
            seen = table.Or(seen, layer);
            row[followed] = layer;
            Put(row, followed + 1, table.Except(reach.Following.Image(layer), seen));
            Put(next, followed, table.Except(reach.Operating.Image(layer), seen));
        }
        return row;
    }

    private void Put(List<Diagram> row, int at, Diagram states)
    {
        if (states.IsFalse)
            return;
        while (row.Count <= at)
            row.Add(Diagram.False);
        row[at] = table.Or(row[at], states);
    }
}
