using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>What given sources reach in an eliminated graph; each node's condition is worked out when asked for.</summary>
internal sealed class Spread(Elimination graph, Dictionary<int, Diagram> given)
{
    private readonly Dictionary<int, Diagram> known = [];

    public Diagram this[int node]
    {
        get
        {
            if (given.Count == 0)
                return Diagram.False;
            if (!known.TryGetValue(node, out var reached))
            {
                reached = graph.Reached(
                    node,
                    given.GetValueOrDefault(node, Diagram.False),
                    later => this[later]
                );
                known.Add(node, reached);
            }
            return reached;
        }
    }
}
