using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The states on the way to a target, by how many moves had to be made to get there and how many followed by
/// themselves.
/// </summary>
/// <param name="table">Where the diagrams live.</param>
/// <param name="reach">The moves and where they start.</param>
/// <param name="useful">For each number of made moves, the states that are of any use.</param>
internal sealed class Layers(DiagramTable table, Reach reach, IReadOnlyList<Diagram> useful)
{
    /// <summary>By following moves, then by made moves; a state is in the first layer that it is reached in.</summary>
    private readonly List<Diagram[]> layers = [];
    private readonly Diagram[] seen = [.. useful.Select(_ => Diagram.False)];

    /// <summary>How many moves follow on the shortest way; the target must be reached with all the made moves.</summary>
    public int FewestFollowed(Diagram target)
    {
        do layers.Add(Next());
        while (!table.Meet(layers[^1][^1], target));
        return layers.Count - 1;
    }

    /// <summary>The states of each layer, by made and following moves, that lie on a shortest way to the target.</summary>
    public Diagram[,] WaysTo(Diagram target, int followed)
    {
        var ways = new Diagram[useful.Count, followed + 1];
        for (var made = useful.Count - 1; made >= 0; made--)
        for (var after = followed; after >= 0; after--)
        {
            var last = made == useful.Count - 1 && after == followed;
            ways[made, after] = last ? table.And(layers[after][made], target) : OnWay(ways, made, after);
        }
        return ways;
    }

    private Diagram OnWay(Diagram[,] ways, int made, int followed)
    {
        var (layer, onWay) = (layers[followed][made], Diagram.False);
        if (made + 1 < ways.GetLength(0))
            onWay = reach.Operating.From(layer).Preimage(ways[made + 1, followed]);
        if (followed + 1 < ways.GetLength(1))
            onWay = table.Or(onWay, reach.Following.From(layer).Preimage(ways[made, followed + 1]));
        return onWay;
    }

    private Diagram[] Next()
    {
        var layer = new Diagram[useful.Count];
        for (var made = 0; made < layer.Length; made++)
        {
            var reached = layers.Count == 0 ? Diagram.False : reach.Following.Image(layers[^1][made]);
            if (made > 0)
                reached = table.Or(reached, reach.Operating.Image(layer[made - 1]));
            else if (layers.Count == 0)
                reached = reach.Start;
            layer[made] = table.Except(table.And(reached, useful[made]), seen[made]);
            seen[made] = table.Or(seen[made], layer[made]);
        }
        return layer;
    }
}
