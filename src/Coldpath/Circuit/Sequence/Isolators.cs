using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// What can be done at a panel to make parts of it dead, for all targets: a copy in which each isolating device has a
/// switch that takes its poles out and each stored source one that takes its charge.
/// </summary>
public sealed class Isolators
{
    private readonly Netlist netlist;
    private readonly DiagramTable table;
    private readonly IsolationAct[] acts;
    private readonly Lazy<SwitchedPanel> asked;
    private readonly Dictionary<string, SwitchedPanel> withDone = [];

    /// <param name="netlist">The panel.</param>
    /// <param name="table">Where the diagrams of the sets live; what is asked besides has its budget.</param>
    public Isolators(Netlist netlist, DiagramTable table)
    {
        this.netlist = netlist;
        this.table = table;
        acts = [.. ActsOf(netlist)];
        asked = new(() => new(netlist, acts, null, table));
    }

    /// <summary>
    /// Values that a reader expects, one for each variable of the netlist; how something stays live is told with as many
    /// of them, from the first on, as it can be. Null: any will do.
    /// </summary>
    public IReadOnlyList<int>? Usual { get; init; }

    /// <summary>Isolating devices, then stored sources, in declared order.</summary>
    public IReadOnlyList<IsolationAct> Acts => acts;

    /// <summary>The panel in which each act is asked about.</summary>
    internal SwitchedPanel Asked => asked.Value;

    /// <summary>How the net can be live with these acts done and perhaps further ones; null when it cannot.</summary>
    public Survival? StaysLive(string net, IEnumerable<string> done) => StaysLive([net], done);

    /// <summary>How one of the nets can be live with these acts done and perhaps further ones; null when none can.</summary>
    public Survival? StaysLive(IReadOnlyCollection<string> nets, IEnumerable<string> done) =>
        new Survivals(netlist, acts, WithDone(done), Usual).Of(nets);

    /// <summary>With these acts done, and perhaps further ones, one of the nets can be live.</summary>
    internal bool CanBeLive(IEnumerable<string> nets, IEnumerable<string> done) =>
        !WithDone(done).Live(nets).IsFalse;

    /// <summary>
    /// The conductors that the nets are dead only by: with these acts done, and perhaps further ones, the breaking of
    /// the one conductor makes something live. Asked of nets that are dead while all is whole.
    /// </summary>
    public IReadOnlyList<string> OnlyWhileWhole(IEnumerable<string> nets, IEnumerable<string> done)
    {
        var panel = new SwitchedPanel(netlist, acts, Named(done), table.Another(), breaking: true);
        var live = panel.Live(nets);
        return [.. Switches.Conductors(netlist).Where(c => panel.Space.Table.Meet(live, panel.IsBroken(c)))];
    }

    private SwitchedPanel WithDone(IEnumerable<string> done)
    {
        var chosen = Named(done);
        var key = string.Join('\n', chosen.Select(a => a.Name));
        if (!withDone.TryGetValue(key, out var panel))
        {
            panel = new(netlist, acts, chosen, table.Another());
            withDone.Add(key, panel);
        }
        return panel;
    }

    private IsolationAct[] Named(IEnumerable<string> names)
    {
        var chosen = names.ToHashSet();
        var unknown = chosen.Except(acts.Select(a => a.Name)).FirstOrDefault();
        return unknown is null
            ? [.. acts.Where(a => chosen.Contains(a.Name))]
            : throw new ArgumentException($"{unknown} is no isolating device", nameof(names));
    }

    private static IEnumerable<IsolationAct> ActsOf(Netlist netlist)
    {
        var supplies = netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));
        return netlist
            .Devices.Where(d => d.Isolates is { Elements.Count: > 0 })
            .Select(d => new IsolationAct(d.Tag, d, null))
            .Concat(
                supplies.Where(s => s.Store is not null).Select(s => new IsolationAct(s.Name, null, s.Store))
            );
    }
}
