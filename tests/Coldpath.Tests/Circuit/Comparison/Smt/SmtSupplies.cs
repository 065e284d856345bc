using System.Numerics;
using Coldpath.Wiring;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>One conductor of a supply, where it is connected, and when it is there.</summary>
internal sealed record SmtConductor(
    string Supply,
    string Group,
    string Net,
    Complex Volts,
    Polarity Polarity,
    string Present,
    bool Stored
);

/// <summary>The conductors that are there in a state: those of supplies, then converters' by least fixpoint.</summary>
internal static class SmtSupplies
{
    /// <param name="text">Takes the definitions.</param>
    /// <param name="graph">What is closed.</param>
    /// <param name="variables">The state.</param>
    /// <param name="lost">For a supply when it is taken away.</param>
    public static SmtNetwork Network(
        SmtText text,
        SmtGraph graph,
        SmtVariables variables,
        Func<Supply, string>? lost = null
    )
    {
        lost ??= _ => "false";
        var netlist = graph.Netlist;
        var first = netlist.Supplies.SelectMany(s => Conductors(s, "true")).ToArray();
        var network = new SmtNetwork(text, graph, first);
        foreach (var _ in netlist.Converters)
            network = new(text, graph, [.. first, .. netlist.Converters.SelectMany(c => Output(c, network))]);
        return network;

        IEnumerable<SmtConductor> Output(Converter converter, SmtNetwork fed) =>
            Conductors(converter.Output, fed.Of(converter.When, variables));

        IEnumerable<SmtConductor> Conductors(Supply supply, string active) =>
            supply.Conductors.Select(c => new SmtConductor(
                supply.Name,
                supply.Group,
                c.Net,
                Volts(c),
                c.Polarity,
                text.Name(
                    And(
                        active,
                        variables.Guard(supply.Present),
                        variables.Guard(c.Present),
                        Not(lost(supply))
                    )
                ),
                supply.Store is not null
            ));
    }

    /// <summary>A minus that is given no angle stands below zero.</summary>
    private static Complex Volts(SupplyConductor conductor) =>
        conductor is { Polarity: Polarity.Minus, Degrees: 0 }
            ? -Math.Abs(conductor.Volts)
            : Complex.FromPolarCoordinates(conductor.Volts, conductor.Degrees * Math.PI / 180);
}
