using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The network as it is when the supplies that stand shorted have collapsed. A converter fed from such a supply
/// loses its output with it. Each supply gets a switch of its own in a second network; a condition is worked out
/// there and the switches are then replaced by "this supply is shorted".
/// </summary>
internal sealed class LostSupplies
{
    private readonly Network network;
    private readonly Network collapsing;
    private readonly string[] supplies;

    /// <param name="netlist">The panel.</param>
    /// <param name="network">Its network.</param>
    /// <param name="order">The order of its variables in the space.</param>
    public LostSupplies(Netlist netlist, Network network, IReadOnlyList<int> order)
    {
        this.network = network;
        supplies = [.. netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output)).Select(s => s.Name)];
        var switched = WithSwitches(netlist);
        int[] extended = [.. order, .. Enumerable.Range(netlist.Variables.Count, supplies.Length)];
        collapsing = new Network(switched, new StateSpace(switched, network.States.Table, extended));
    }

    /// <summary>The condition with every shorted supply gone.</summary>
    public Diagram Of(Expression condition)
    {
        var space = collapsing.States;
        var result = collapsing.Of(condition);
        foreach (var supply in supplies)
        {
            var lost = space.Table.Restrict(result, space.Is(Switch(supply), "yes"));
            var kept = space.Table.Restrict(result, space.Is(Switch(supply), "no"));
            result = space.Table.IfThenElse(network.Short(supply), lost, kept);
        }
        return result;
    }

    private Netlist WithSwitches(Netlist netlist) =>
        netlist with
        {
            Variables = [.. netlist.Variables, .. supplies.Select(SwitchOf)],
            Supplies = [.. netlist.Supplies.Select(Switched)],
            Converters = [.. netlist.Converters.Select(c => c with { Output = Switched(c.Output) })],
        };

    private static Supply Switched(Supply supply) =>
        supply with
        {
            Present = Expression.AllOf(supply.Present, new VariableIs(Switch(supply.Name), "no")),
        };

    private static Variable SwitchOf(string supply) =>
        new()
        {
            Name = Switch(supply),
            Device = supply,
            Kind = VariableKind.Supply,
            Values = ["no", "yes"],
            Rest = "no",
        };

    private static string Switch(string supply) => $"{supply} lost";
}
