using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Which nodes at the front of a sweep are joined, and what is left of the conditions of links that have begun; as a text it
/// is the same whenever what follows is the same.
/// </summary>
internal sealed class SweptState
{
    private readonly DiagramTable table;
    private readonly SweptGraph graph;
    private readonly int[] labels;
    private readonly Diagram[] left;
    private readonly int[] names;
    private char[] text = [];

    public SweptState(DiagramTable table, SweptGraph graph)
    {
        this.table = table;
        this.graph = graph;
        labels = new int[graph.Nodes];
        names = new int[graph.Nodes + 2];
        left = new Diagram[graph.Links.Count];
    }

    /// <summary>The two ends are joined already.</summary>
    public bool IsJoined => labels[graph.From] == labels[graph.To];

    /// <summary>Nothing decided yet.</summary>
    public string Start(Front front)
    {
        (labels[graph.From], labels[graph.To]) = (0, 1);
        return Write(front).ToString();
    }

    /// <summary>Takes up a state at the front.</summary>
    public void Read(string key, Front front)
    {
        var at = 0;
        foreach (var node in front.Nodes)
            labels[node] = key[at++];
        var label = at;
        foreach (var (number, _) in front.Begun)
            left[number] = new(key[at++] << 16 | key[at++]);
        foreach (var node in front.Beginning)
            labels[node] = label++;
    }

    /// <summary>The level that comes next gets a value.</summary>
    public void Pass(Front front, int level, bool value)
    {
        foreach (var (number, link) in front.Met)
        {
            var condition = link.First == front.Number ? link.Condition : left[number];
            if (table.Level(condition) == level)
                condition = value ? table.High(condition) : table.Low(condition);
            if (condition.IsTrue)
                Join(front, labels[link.A], labels[link.B]);
            left[number] = condition.IsTrue ? Diagram.False : condition;
        }
    }

    /// <summary>One of the ends is joined to nothing that goes on.</summary>
    public bool IsApart(Front front) =>
        !front.FromGoesOn && !IsAt(front, labels[graph.From])
        || !front.ToGoesOn && !IsAt(front, labels[graph.To]);

    /// <summary>The state at the front as a text, good until the next one is written.</summary>
    public ReadOnlySpan<char> Write(Front front)
    {
        var length = front.Nodes.Length + 2 * front.Begun.Length;
        if (text.Length < length)
            text = new char[length];
        Array.Fill(names, -1);
        var (at, next) = (0, 0);
        foreach (var node in front.Nodes)
        {
            ref var name = ref names[labels[node]];
            text[at++] = (char)(name < 0 ? name = next++ : name);
        }
        foreach (var (number, _) in front.Begun)
        {
            text[at++] = (char)(left[number].Edge >> 16);
            text[at++] = (char)left[number].Edge;
        }
        return text.AsSpan(0, length);
    }

    private bool IsAt(Front front, int label)
    {
        for (var i = 2; i < front.Nodes.Length; i++)
            if (labels[front.Nodes[i]] == label)
                return true;
        return false;
    }

    private void Join(Front front, int one, int other)
    {
        if (one == other)
            return;
        foreach (var node in front.Nodes)
            Rename(node);
        foreach (var node in front.Beginning)
            Rename(node);

        void Rename(int node)
        {
            if (labels[node] == other)
                labels[node] = one;
        }
    }
}
