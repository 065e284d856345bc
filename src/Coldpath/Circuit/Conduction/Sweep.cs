using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// The condition under which two nodes are joined, level by level from the first on: what the levels behind have come to
/// is no more than which nodes at the front are joined, so that assignments which leave these alike are one node of the
/// diagram (the frontier method: K. Sekine, H. Imai and S. Tani, "Computing the Tutte polynomial of a graph of moderate
/// size", ISAAC 1995). In a mesh this takes hardly more nodes than the diagram has, where elimination takes a hundred
/// times as many.
/// </summary>
internal sealed class Sweep
{
    /// <summary>States at all fronts together, some seconds' work; elimination is tried beyond.</summary>
    private const int MostStates = 1 << 21;

    /// <summary>
    /// A condition over more variables is one of earth's hold elsewhere, and what is left of it would be part of every
    /// state: elimination is better there.
    /// </summary>
    private const int MostVariables = 4;

    private const int Apart = -1;
    private const int Joined = -2;

    private readonly DiagramTable table;
    private readonly SweptGraph graph;
    private readonly Front[] fronts;
    private readonly SweptState state;
    private readonly List<(int Low, int High)[]> layers = [];

    private Sweep(DiagramTable table, SweptGraph graph)
    {
        this.table = table;
        this.graph = graph;
        fronts = [.. Enumerable.Range(0, graph.Levels.Count + 1).Select(n => new Front(graph, n))];
        state = new(table, graph);
    }

    /// <summary>
    /// Some source reaches one of the targets; null when that is no question for a sweep: a link has a direction or
    /// depends on much, or more is at the fronts than can be held.
    /// </summary>
    /// <param name="table">Where the conditions live.</param>
    /// <param name="graph">The links.</param>
    /// <param name="sources">Nodes, each with the condition under which it is a source.</param>
    /// <param name="targets">Nodes.</param>
    public static Diagram? Reached(
        DiagramTable table,
        GuardedGraph graph,
        IReadOnlyCollection<KeyValuePair<int, Diagram>> sources,
        IReadOnlyCollection<int> targets
    )
    {
        var (from, to) = (graph.Nodes, graph.Nodes + 1);
        var links = new List<(int A, int B, Diagram Condition)>();
        for (var a = 0; a < graph.Nodes; a++)
            foreach (var (b, condition) in graph.From(a))
                if (graph.Condition(b, a) != condition)
                    return null;
                else if (a < b)
                    links.Add((a, b, condition));
        links.AddRange(sources.Where(s => !s.Value.IsFalse).Select(s => (from, s.Key, s.Value)));
        links.AddRange(targets.Select(target => (target, to, Diagram.True)));
        return Joins(table, new SweptGraph(table, graph.Nodes + 2, links, from, to));
    }

    private static Diagram? Joins(DiagramTable table, SweptGraph graph)
    {
        if (graph.From == graph.To)
            return Diagram.True;
        if (graph.Links.Count == 0)
            return Diagram.False;
        if (graph.Links.Any(l => table.Support(l.Condition).Count > MostVariables))
            return null;
        var sweep = new Sweep(table, graph);
        return sweep.Build() ? sweep.Read() : null;
    }

    /// <summary>Layer by layer the states that differ; false when there are too many.</summary>
    private bool Build()
    {
        var (open, held) = (new List<string> { state.Start(fronts[0]) }, 0);
        for (var number = 0; number < graph.Levels.Count; number++)
        {
            held += open.Count;
            if (held > MostStates || !table.Affords(held))
                return false;
            var next = new Dictionary<string, int>();
            layers.Add([
                .. open.Select(key => (Next(key, number, false, next), Next(key, number, true, next))),
            ]);
            open = [.. next.OrderBy(p => p.Value).Select(p => p.Key)];
        }
        return true;
    }

    private int Next(string key, int number, bool value, Dictionary<string, int> next)
    {
        state.Read(key, fronts[number]);
        state.Pass(fronts[number], graph.Levels[number], value);
        if (state.IsJoined)
            return Joined;
        if (state.IsApart(fronts[number + 1]))
            return Apart;
        var after = state.Write(fronts[number + 1]);
        var known = next.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!known.TryGetValue(after, out var index))
            next.Add(after.ToString(), index = next.Count);
        return index;
    }

    /// <summary>The layers as a diagram, the last first.</summary>
    private Diagram Read()
    {
        Diagram[] below = [];
        for (var number = layers.Count - 1; number >= 0; number--)
        {
            var variable = table.Variable(graph.Levels[number]);
            var ahead = below;
            below =
            [
                .. layers[number]
                    .Select(s => table.IfThenElse(variable, At(s.High, ahead), At(s.Low, ahead))),
            ];
        }
        return below[0];
    }

    private static Diagram At(int index, Diagram[] layer) =>
        index switch
        {
            Joined => Diagram.True,
            Apart => Diagram.False,
            _ => layer[index],
        };
}
