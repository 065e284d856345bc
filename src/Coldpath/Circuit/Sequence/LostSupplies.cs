using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The network as it is when the supplies that stand shorted have collapsed: one network for each set of supplies that
/// can be shorted together. A converter fed from such a supply loses its output with it.
/// </summary>
internal sealed class LostSupplies
{
    private readonly Network network;
    private readonly List<(Diagram When, Network Left)> collapses = [];

    public LostSupplies(Network network)
    {
        this.network = network;
        var supplies = network.Netlist.Supplies.Concat(network.Netlist.Converters.Select(c => c.Output));
        Split([.. supplies.Select(s => s.Name)], [], network.States.Domain);
    }

    private DiagramTable Table => network.States.Table;

    /// <summary>The condition with every shorted supply gone.</summary>
    public Diagram Of(Expression condition)
    {
        var result = network.Of(condition);
        foreach (var (when, left) in collapses)
            result = Table.IfThenElse(when, left.Of(condition), result);
        return result;
    }

    /// <summary>The netlist without these supplies, couplings left as they are.</summary>
    public static Netlist Without(Netlist netlist, IReadOnlyCollection<string> supplies)
    {
        Supply Lost(Supply supply) =>
            supplies.Contains(supply.Name) ? supply with { Present = Expression.False } : supply;
        return netlist with
        {
            Supplies = [.. netlist.Supplies.Select(Lost)],
            Converters = [.. netlist.Converters.Select(c => c with { Output = Lost(c.Output) })],
        };
    }

    private void Split(ReadOnlySpan<string> supplies, string[] lost, Diagram when)
    {
        if (when.IsFalse)
            return;
        if (supplies.Length > 0)
        {
            var shorted = network.Short(supplies[0]);
            Split(supplies[1..], [.. lost, supplies[0]], Table.And(when, shorted));
            Split(supplies[1..], lost, Table.Except(when, shorted));
        }
        else if (lost.Length > 0)
            collapses.Add((when, new Network(Without(network.Netlist, lost), network.States)));
    }
}
