using Coldpath.Wiring;

namespace Coldpath.Circuit.States;

/// <summary>
/// The order of variables in the diagrams: those that meet at a net or in a move's condition come close together
/// (the FORCE heuristic: each variable moves to the mean place of the groups it belongs to, small groups counting for
/// more, until the total span of the groups falls no more), and those next to the supplies come last. Nearly every condition ends in "and the
/// panel is fed", and an ending is shared where a beginning is not: the other way round takes 2.4 times the nodes on
/// the sample panels.
/// </summary>
public static class VariableOrder
{
    private const int MostRounds = 60;

    public static IReadOnlyList<int> Of(Netlist netlist)
    {
        var groups = Groups(netlist);
        var best = Beginnings(groups, netlist.Variables.Count)
            .Select(order => Drawn(groups, order))
            .MinBy(order => Span(groups, order))!;
        return EndsAtSupplies(netlist, best) ? best : [.. best.Reverse()];
    }

    /// <summary>
    /// Orders to begin with; the heuristic stays near the one it is given. In one that follows the circuit, parts that hang on
    /// the rest by little stay together: a board with ten feeders takes an eighteenth of the nodes so.
    /// </summary>
    private static IEnumerable<int[]> Beginnings(List<int[]> groups, int variables)
    {
        yield return [.. Enumerable.Range(0, variables).Reverse()];
        yield return Followed(groups, variables);
    }

    /// <summary>From the variable that meets fewest others on, always through the smallest group first.</summary>
    private static int[] Followed(List<int[]> groups, int variables)
    {
        var of = groups
            .SelectMany(g => g.Select(v => (Variable: v, Group: g)))
            .OrderBy(g => g.Group.Length)
            .ToLookup(p => p.Variable, p => p.Group);
        var met = new List<int>();
        var seen = new HashSet<int>();
        var begun = new HashSet<int[]>();
        var open = new Stack<IEnumerator<int>>();
        foreach (var first in Enumerable.Range(0, variables).OrderBy(v => of[v].Sum(g => g.Length - 1)))
        {
            Meet(first);
            while (open.TryPeek(out var others))
                if (others.MoveNext())
                    Meet(others.Current);
                else
                    open.Pop();
        }
        return [.. met];

        void Meet(int variable)
        {
            if (!seen.Add(variable))
                return;
            met.Add(variable);
            open.Push(of[variable].Where(begun.Add).SelectMany(group => group).GetEnumerator());
        }
    }

    /// <summary>The best of the orders that the heuristic passes from this one on, this one included.</summary>
    private static int[] Drawn(List<int[]> groups, int[] order)
    {
        var (best, least) = (order, Span(groups, order));
        for (var round = 0; round < MostRounds; round++)
        {
            var next = DrawnOnce(groups, order);
            if (next.SequenceEqual(order))
                break;
            order = next;
            var span = Span(groups, order);
            if (span < least)
                (best, least) = (order, span);
        }
        return best;
    }

    /// <summary>The variables of the supplies, and of what hangs on their conductors, lie rather at the end.</summary>
    private static bool EndsAtSupplies(Netlist netlist, int[] order)
    {
        var conductors = netlist.Supplies.SelectMany(s => s.Conductors).ToArray();
        var nets = conductors.Select(c => c.Net).ToHashSet();
        var near = netlist
            .Supplies.Select(s => s.Present)
            .Concat(conductors.Select(c => c.Present))
            .Concat(
                netlist.Elements.Where(e => nets.Contains(e.A) || nets.Contains(e.B)).Select(e => e.Closed)
            )
            .SelectMany(Named)
            .ToHashSet();
        var places = order.Index().Where(p => near.Contains(netlist.Variables[p.Item].Name)).ToArray();
        return places.Length == 0 || places.Average(p => p.Index) >= (order.Length - 1) / 2.0;
    }

    private static List<int[]> Groups(Netlist netlist)
    {
        var indexes = netlist.Variables.Index().ToDictionary(p => p.Item.Name, p => p.Index);
        var atNet = netlist.Nets.ToDictionary(net => net, _ => new SortedSet<int>());
        var elements = netlist.Elements.ToDictionary(e => e.Id);
        foreach (var element in netlist.Elements.Where(e => e.A != netlist.Earth && e.B != netlist.Earth))
        foreach (var variable in Named(element.Closed).Select(name => indexes[name]))
        {
            atNet[element.A].Add(variable);
            atNet[element.B].Add(variable);
        }
        foreach (var supply in netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output)))
        foreach (var conductor in supply.Conductors.Where(c => c.Net != netlist.Earth))
            atNet[conductor.Net]
                .UnionWith(
                    Named(supply.Present).Concat(Named(conductor.Present)).Select(name => indexes[name])
                );
        var groups = atNet.Values.Select(set => set.ToArray()).ToList();
        for (var i = 0; i < netlist.Variables.Count; i++)
            foreach (var move in netlist.Variables[i].Moves)
                groups.Add([.. Touched(move.When).Append(i).Distinct()]);
        groups.RemoveAll(g => g.Length < 2);
        return groups;

        IEnumerable<int> Touched(Expression when) =>
            Named(when)
                .Select(name => indexes[name])
                .Concat(
                    NetsOf(when, elements).Where(net => net != netlist.Earth).SelectMany(net => atNet[net])
                );
    }

    private static IEnumerable<string> Named(Expression expression) =>
        expression switch
        {
            VariableIs v => [v.Variable],
            Not n => Named(n.Term),
            All a => a.Terms.SelectMany(Named),
            Any a => a.Terms.SelectMany(Named),
            _ => [],
        };

    private static IEnumerable<string> NetsOf(Expression expression, Dictionary<string, Element> elements) =>
        expression switch
        {
            Not n => NetsOf(n.Term, elements),
            All a => a.Terms.SelectMany(t => NetsOf(t, elements)),
            Any a => a.Terms.SelectMany(t => NetsOf(t, elements)),
            Energised e => [e.A, e.B],
            Fed f => [f.A, f.B, f.C],
            SinglePhased s => [s.A, s.B, s.C],
            Joined j => [j.A, j.B],
            Live l => [l.Net],
            Carries c => [elements[c.Element].A, elements[c.Element].B],
            Closed c => [elements[c.Element].A, elements[c.Element].B],
            _ => [],
        };

    private static int[] DrawnOnce(List<int[]> groups, int[] order)
    {
        var places = Places(order);
        var sums = new double[order.Length];
        var counts = new double[order.Length];
        foreach (var group in groups)
        {
            var centre = group.Average(v => (double)places[v]);
            var weight = 1.0 / (group.Length - 1);
            foreach (var variable in group)
            {
                sums[variable] += weight * centre;
                counts[variable] += weight;
            }
        }
        return
        [
            .. order.OrderBy(v => counts[v] == 0 ? places[v] : sums[v] / counts[v]).ThenBy(v => places[v]),
        ];
    }

    private static double Span(List<int[]> groups, int[] order)
    {
        var places = Places(order);
        return groups.Sum(g => (double)(g.Max(v => places[v]) - g.Min(v => places[v])) / (g.Length - 1));
    }

    private static int[] Places(int[] order)
    {
        var places = new int[order.Length];
        for (var i = 0; i < order.Length; i++)
            places[order[i]] = i;
        return places;
    }
}
