using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// What a short does to the moves: a device whose element carries short current opens, and the shorted supplies may
/// have collapsed until one does.
/// </summary>
internal sealed class ShortCircuits
{
    private readonly Netlist netlist;
    private readonly StateSpace space;
    private readonly Constraints constraints;
    private readonly Network network;
    private readonly Lazy<Network> unlimited;
    private readonly Lazy<LostSupplies> lost;

    public ShortCircuits(Netlist netlist, Network network, Constraints constraints)
    {
        this.netlist = netlist;
        this.network = network;
        this.constraints = constraints;
        space = network.States;
        lost = new(() => new LostSupplies(network));
        unlimited = new(WithoutLimited);
        Shorted = Table.And(network.AnyShort(), space.Domain);
        Openings = Shorted.IsFalse ? [] : [.. FindOpenings()];
        Cleared = Table.AnyOf(Openings.Select(o => o.Certain));
        Unprotected = Table.Except(
            Shorted,
            Table.AnyOf(Openings.Select(o => Table.Or(o.Certain, o.Shorted)))
        );
    }

    /// <summary>States with a short.</summary>
    public Diagram Shorted { get; }

    /// <summary>Shorted states in which some device is sure to open.</summary>
    public Diagram Cleared { get; }

    /// <summary>Shorted states in which no device in the way of a short can open.</summary>
    public Diagram Unprotected { get; }

    public IReadOnlyList<Transition> Openings { get; }

    private DiagramTable Table => space.Table;

    /// <summary>The condition with the shorted supplies gone; the condition itself where there is no short.</summary>
    public Diagram AfterCollapse(Expression condition) =>
        Shorted.IsFalse ? network.Of(condition) : lost.Value.Of(condition);

    private IEnumerable<Transition> FindOpenings() =>
        from opening in netlist.Devices.SelectMany(d => d.OpensOnShort)
        let variable = space.IndexOf(opening.Variable)
        let to = space.IndexOfValue(opening.Variable, opening.To)
        let carrying = Carrying(network, opening)
        let sure = Table.And(carrying, Carrying(unlimited.Value, opening))
        from value in Enumerable.Range(0, space.Variables[variable].Values.Count)
        where value != to
        let here = Table.AllOf(Shorted, space.Is(variable, value), constraints.Allow(variable, to))
        select new Transition(variable, value, to, Cause.Short)
        {
            Certain = Table.And(sure, here),
            Uncertain = Diagram.False,
            Shorted = Table.Except(Table.And(carrying, here), sure),
            Blocked = Diagram.False,
        };

    private Diagram Carrying(Network network, ShortOpening opening) =>
        Table.AnyOf(opening.Elements.Select(network.CarriesShort));

    /// <summary>Only what can deliver its short-circuit current, and what is fed from that alone.</summary>
    private Network WithoutLimited()
    {
        var supplies = netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));
        string[] limited = [.. supplies.Where(s => s.Limited).Select(s => s.Name)];
        return limited.Length == 0 ? network : new(LostSupplies.Without(netlist, limited), space);
    }
}
