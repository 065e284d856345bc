using System.Text;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Diagrams over two-valued variables written out for an SMT solver, node by node.</summary>
internal sealed class SmtDiagrams
{
    private readonly DiagramTable table;
    private readonly Dictionary<int, string> variables = [];
    private readonly Dictionary<Diagram, string> defined = new()
    {
        [Diagram.True] = "true",
        [Diagram.False] = "false",
    };
    private readonly StringBuilder text = new();

    public SmtDiagrams(StateSpace space, IEnumerable<Diagram> roots)
    {
        table = space.Table;
        for (var v = 0; v < space.Variables.Count; v++)
            variables[space.LevelsOf(v)[0]] = SmtNetwork.Name(space.Variables[v].Name);
        foreach (var (i, root) in roots.Index())
            Define(Root(i), NameOf(root));
    }

    public string Text => text.ToString();

    public static string Root(int index) => $"root{index}";

    private string NameOf(Diagram diagram)
    {
        if (defined.TryGetValue(diagram, out var known))
            return known;
        var (low, high) = (NameOf(table.Low(diagram)), NameOf(table.High(diagram)));
        var name = $"d{defined.Count}";
        defined.Add(diagram, name);
        Define(name, $"(ite {variables[table.Level(diagram)]} {high} {low})");
        return name;
    }

    private void Define(string name, string condition) =>
        text.Append("(declare-const ")
            .Append(name)
            .Append(" Bool)\n")
            .Append("(assert (= ")
            .Append(name)
            .Append(' ')
            .Append(condition)
            .Append("))\n");
}
