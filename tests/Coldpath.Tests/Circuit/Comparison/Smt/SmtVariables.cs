using Coldpath.Wiring;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>A state as the solver chooses it: for each variable the bits of its value's number, highest first.</summary>
internal sealed class SmtVariables
{
    private readonly SmtText text;
    private readonly Dictionary<string, Variable> variables;
    private readonly Dictionary<string, string[]> bits = [];

    public SmtVariables(SmtText text, Netlist netlist, string prefix)
    {
        this.text = text;
        variables = netlist.Variables.ToDictionary(v => v.Name);
        foreach (var variable in netlist.Variables)
        {
            bits[variable.Name] =
            [
                .. Enumerable
                    .Range(0, Width(variable.Values.Count))
                    .Select(bit => text.Choose($"|{prefix} {variable.Name} {bit}|")),
            ];
            text.Assert(Or(variable.Values.Select(value => Is(variable.Name, value))));
        }
    }

    public IReadOnlyList<string> Bits(string variable) => bits[variable];

    public string Is(string variable, string value) =>
        text.Name(Code(variable, variables[variable].Values.Index().Single(v => v.Item == value).Index));

    public string Code(string variable, int value) =>
        And(
            bits[variable]
                .Select((bit, i) => Literal(bit, (value >> (bits[variable].Length - 1 - i) & 1) != 0))
        );

    /// <summary>All variables as in the other state, but for this one.</summary>
    public string SameBut(SmtVariables other, string variable) =>
        text.Name(
            And(
                bits.Where(b => b.Key != variable)
                    .SelectMany(b => b.Value.Zip(other.bits[b.Key], (one, two) => $"(= {one} {two})"))
            )
        );

    /// <summary>A guard, with one variable taken as if it had a value.</summary>
    public string Guard(Expression guard, string? set = null, string? to = null) =>
        guard switch
        {
            Constant c => c.Value ? "true" : "false",
            VariableIs v when v.Variable == set => v.Value == to ? "true" : "false",
            VariableIs v => Is(v.Variable, v.Value),
            Not n => Not(Guard(n.Term, set, to)),
            All a => text.Name(And(a.Terms.Select(t => Guard(t, set, to)))),
            Any a => text.Name(Or(a.Terms.Select(t => Guard(t, set, to)))),
            _ => throw new ArgumentException("no guard", nameof(guard)),
        };

    private static int Width(int values) => values <= 1 ? 0 : 32 - int.LeadingZeroCount(values - 1);
}
