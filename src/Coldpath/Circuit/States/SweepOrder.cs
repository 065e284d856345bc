using Coldpath.Wiring;

namespace Coldpath.Circuit.States;

/// <summary>
/// An order of variables for meshes: nets are numbered from one end of the mesh on, nearest first and of those the ones
/// with fewest neighbours (E. Cuthill and J. McKee, "Reducing the bandwidth of sparse symmetric matrices", ACM 1969), and
/// variables follow the nets that they join. So the nets that lie between variables already decided and those still open
/// stay few: a grid of 8 by 8 nets never has more than 9 of them.
/// </summary>
internal static class SweepOrder
{
    /// <summary>This order, or the one by groups where that leaves fewer places open.</summary>
    public static IReadOnlyList<int> Of(Netlist netlist)
    {
        var places = new MeshPlaces(netlist);
        var swept = Swept(places, netlist.Variables.Count);
        var grouped = VariableOrder.Of(netlist);
        return Open(places, swept) <= Open(places, grouped) ? swept : grouped;
    }

    private static int[] Swept(MeshPlaces places, int variables)
    {
        var numbers = Numbered(places);
        return
        [
            .. Enumerable
                .Range(0, variables)
                .OrderBy(v => places.Of(v).Select(p => numbers[p]).DefaultIfEmpty(-1).Min())
                .ThenBy(v => places.Of(v).Select(p => numbers[p]).DefaultIfEmpty(-1).Max())
                .ThenBy(v => v),
        ];
    }

    private static int[] Numbered(MeshPlaces places)
    {
        var numbers = new int[places.Count];
        Array.Fill(numbers, -1);
        var next = 0;
        foreach (var place in Enumerable.Range(0, places.Count).OrderBy(p => places.Beside(p).Count))
            if (numbers[place] < 0)
                foreach (var met in Outward(places, Farthest(places, place)))
                    numbers[met] = next++;
        return numbers;
    }

    /// <summary>A place at an end: as far from the given one as any, and the same again from there.</summary>
    private static int Farthest(MeshPlaces places, int place) =>
        Outward(places, Outward(places, place)[^1])[^1];

    /// <summary>All places that hang together with this one, outward from it.</summary>
    private static List<int> Outward(MeshPlaces places, int start)
    {
        var met = new List<int> { start };
        var seen = new HashSet<int> { start };
        for (var i = 0; i < met.Count; i++)
            met.AddRange(
                places.Beside(met[i]).Where(seen.Add).OrderBy(p => places.Beside(p).Count).ThenBy(p => p)
            );
        return met;
    }

    /// <summary>What the order may cost: for each cut between two variables, 2 to the number of places open there.</summary>
    private static double Open(MeshPlaces places, IReadOnlyList<int> order)
    {
        var opens = new int[order.Count];
        var closes = new int[order.Count];
        var at = order.Index().ToDictionary(p => p.Item, p => p.Index);
        for (var place = 0; place < places.Count; place++)
        {
            opens[places.At(place).Min(v => at[v])]++;
            closes[places.At(place).Max(v => at[v])]++;
        }
        var (open, cost) = (0, 0.0);
        for (var i = 0; i < order.Count; i++)
        {
            open += opens[i] - closes[i];
            cost += Math.Pow(2, open);
        }
        return cost;
    }
}
