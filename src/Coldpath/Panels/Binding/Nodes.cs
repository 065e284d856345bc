using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>Names of nodes, rails and numbered wires, in the order they are first met.</summary>
internal sealed class Nodes
{
    private readonly Dictionary<string, WordSyntax> byName = new(StringComparer.Ordinal);
    private readonly List<WordSyntax> inOrder = [];

    public IReadOnlyList<WordSyntax> InOrder => inOrder;

    public static Nodes Of(PanelSyntax panel)
    {
        var nodes = new Nodes();
        foreach (var statement in panel.Statements)
        {
            if (statement is WireSyntax wire)
                nodes.Add(wire.Number);
            foreach (var name in References.In(statement).Select(r => NamedBy(r.Syntax)).OfType<WordSyntax>())
                nodes.Add(name);
        }
        return nodes;
    }

    public bool Contains(string name) => byName.ContainsKey(name);

    /// <summary>The name that <c>node 100</c> or <c>rail X1</c> gives; null for anything else.</summary>
    public static WordSyntax? NamedBy(RefSyntax reference) =>
        reference is { Terminals: null, Words: [{ Text: "node" or "rail" }, var name] } ? name : null;

    private void Add(WordSyntax name)
    {
        if (name.Text != Pin.Earth.Name && byName.TryAdd(name.Text, name))
            inOrder.Add(name);
    }
}
