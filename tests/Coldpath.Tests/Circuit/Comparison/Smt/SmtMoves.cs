using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>One move of a variable: where it is sure to come and where it is left open.</summary>
internal sealed record SmtMove(Variable Variable, string From, string To, Cause Cause)
{
    public required string Certain { get; init; }
    public required string Open { get; init; }

    public bool Urgent => Cause is Cause.Settle or Cause.Short;

    public bool Welds => Cause == Cause.Failure && Variable.Class == FailureClass.Contact;
}

/// <summary>Every move of a panel, short-circuit devices' openings included.</summary>
internal sealed class SmtMoves
{
    private readonly SmtText text;
    private readonly Netlist netlist;
    private readonly SmtVariables variables;
    private readonly SmtNetwork network;

    /// <summary>The network with shorted supplies, and all that they feed, taken away.</summary>
    private readonly SmtNetwork lost;

    /// <summary>The network with supplies that cannot deliver their short taken away.</summary>
    private readonly SmtNetwork strong;
    private readonly string shorted;
    private readonly string cleared;

    private SmtMoves(SmtText text, SmtGraph graph, SmtVariables variables)
    {
        (this.text, this.variables, netlist) = (text, variables, graph.Netlist);
        network = SmtSupplies.Network(text, graph, variables);
        lost = SmtSupplies.Network(text, graph, variables, s => network.Shorted(s.Name));
        strong = SmtSupplies.Network(text, graph, variables, s => s.Limited ? "true" : "false");
        shorted = network.AnyShorted;
        Openings = [.. netlist.Devices.SelectMany(d => d.OpensOnShort).SelectMany(Opening)];
        cleared = text.Name(Or(Openings.Select(o => o.Certain)));
    }

    private SmtMove[] Openings { get; }

    public static (SmtNetwork Network, IReadOnlyList<SmtMove> Moves) Of(
        SmtText text,
        SmtGraph graph,
        SmtVariables variables
    )
    {
        var moves = new SmtMoves(text, graph, variables);
        var declared = moves.netlist.Variables.SelectMany(v => v.Moves.Select(m => moves.Of(v, m)));
        return (moves.network, [.. declared, .. moves.Openings]);
    }

    private SmtMove Of(Variable variable, Move move)
    {
        var at = And(variables.Is(variable.Name, move.From), Allowed(variable.Name, move.To));
        var (certain, open) = Wanted(variable, move);
        return new(variable, move.From, move.To, Enum.Parse<Cause>(move.By.ToString()))
        {
            Certain = text.Name(And(at, certain)),
            Open = text.Name(And(at, Not(text.Name(certain)), open)),
        };
    }

    private (string Certain, string Open) Wanted(Variable variable, Move move)
    {
        var when = text.Name(network.Of(move.When, variables));
        var may = text.Name(network.Of(move.May, variables));
        if (shorted == "false" || move.By != Mover.Settle)
            return (when, may);
        if (variable.Kind == VariableKind.Armature && move.To != variable.Rest)
            return Pull(move, when, may);
        return variable.Kind != VariableKind.Position && move.To == variable.Rest
            ? (when, text.Name(Or(may, And(shorted, Or(WhenLost(move), MayLost(move))))))
            : (when, may);
    }

    /// <summary>In a short only what is fed from elsewhere pulls for certain; the rest may if nothing clears the short.</summary>
    private (string Certain, string Open) Pull(Move move, string when, string may)
    {
        var still = Or(Not(shorted), WhenLost(move));
        var open = Or(Not(shorted), Not(cleared), WhenLost(move), MayLost(move));
        return (text.Name(And(when, still)), text.Name(And(Or(may, And(shorted, when)), open)));
    }

    private string WhenLost(Move move) => text.Name(lost.Of(move.When, variables));

    private string MayLost(Move move) => text.Name(lost.Of(move.May, variables));

    private IEnumerable<SmtMove> Opening(ShortOpening opening)
    {
        var variable = netlist.Variables.Single(v => v.Name == opening.Variable);
        var elements = netlist.Elements.Where(e => opening.Elements.Contains(e.Id)).ToArray();
        var carries = text.Name(Or(elements.Select(network.CarriesShort)));
        var surely = text.Name(And(carries, Or(elements.Select(strong.CarriesShort))));
        foreach (var from in variable.Values.Where(v => v != opening.To))
        {
            var at = And(variables.Is(variable.Name, from), Allowed(variable.Name, opening.To));
            yield return new(variable, from, opening.To, Cause.Short)
            {
                Certain = text.Name(And(at, surely)),
                Open = text.Name(And(at, carries, Not(surely))),
            };
        }
    }

    private string Allowed(string variable, string to) =>
        text.Name(And(netlist.Constraints.Select(c => variables.Guard(c.Holds, variable, to))));
}
