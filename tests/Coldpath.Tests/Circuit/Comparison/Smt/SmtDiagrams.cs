using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>Sets of states, given as diagrams, written out for an SMT solver node by node.</summary>
internal sealed class SmtDiagrams
{
    private readonly SmtText text;
    private readonly DiagramTable table;
    private readonly Dictionary<int, string> bits = [];
    private readonly Dictionary<Diagram, string> known = new()
    {
        [Diagram.True] = "true",
        [Diagram.False] = "false",
    };

    public SmtDiagrams(SmtText text, StateSpace space, SmtVariables variables)
    {
        (this.text, table) = (text, space.Table);
        foreach (var (index, variable) in space.Variables.Index())
        foreach (var (level, bit) in space.LevelsOf(index).Zip(variables.Bits(variable.Name)))
            bits[level] = bit;
    }

    public string Of(Diagram diagram)
    {
        if (known.TryGetValue(diagram, out var name))
            return name;
        var (low, high) = (Of(table.Low(diagram)), Of(table.High(diagram)));
        return known[diagram] = text.Name($"(ite {bits[table.Level(diagram)]} {high} {low})");
    }
}
