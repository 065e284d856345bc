using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// A copy of a panel with a further variable for each isolating act, after the panel's own, and if asked for one that
/// says which conductor, if any, is broken.
/// </summary>
internal sealed class SwitchedPanel
{
    private const string None = "none";
    private const string Broken = "broken conductor";

    public SwitchedPanel(Netlist netlist, IReadOnlyList<IsolationAct> acts, DiagramTable table, bool breaking)
    {
        var doneBy = acts.SelectMany(a =>
                (a.Device?.Isolates?.Elements ?? []).Select(e => (Element: e, Act: a))
            )
            .ToLookup(p => p.Element, p => p.Act);
        var stored = acts.Where(a => a.Store is not null).ToDictionary(a => a.Name);
        var variables = netlist.Variables.Concat(acts.Select(a => Choice(Switch(a), a.Name, ["no", "yes"])));
        var switched = netlist with
        {
            Variables = breaking
                ? [.. variables, Choice(Broken, "", [None, .. Conductors(netlist)])]
                : [.. variables],
            Elements = [.. netlist.Elements.Select(e => Switched(e, doneBy[e.Id], breaking))],
            Supplies = [.. netlist.Supplies.Select(Discharged)],
            Converters = [.. netlist.Converters.Select(c => c with { Output = Discharged(c.Output) })],
        };
        Space = new(switched, table);
        Network = new(switched, Space);

        Supply Discharged(Supply supply) =>
            stored.TryGetValue(supply.Name, out var act)
                ? supply with
                {
                    Present = Expression.AllOf(supply.Present, NotDone(act)),
                }
                : supply;
    }

    public StateSpace Space { get; }

    public Network Network { get; }

    public static IEnumerable<string> Conductors(Netlist netlist) =>
        netlist.Elements.Where(e => e.Type == ElementType.Conductor).Select(e => e.Id);

    public Diagram IsDone(IsolationAct act) => Space.Is(Switch(act), "yes");

    public int LevelOf(IsolationAct act) => Space.LevelsOf(Space.IndexOf(Switch(act)))[0];

    /// <summary>This conductor is broken, all others whole; only where breaking was asked for.</summary>
    public Diagram IsBroken(string conductor) => Space.Is(Broken, conductor);

    /// <summary>What is taken out neither conducts nor leaks.</summary>
    private static Element Switched(Element element, IEnumerable<IsolationAct> acts, bool breaking)
    {
        var inPlace = acts.Select(NotDone).ToList();
        if (breaking && element.Type == ElementType.Conductor)
            inPlace.Add(new Not(new VariableIs(Broken, element.Id)));
        var leaks =
            element.Leaks
            ?? (element.Type == ElementType.Semiconductor ? Expression.Negate(element.Closed) : null);
        return element with
        {
            Closed = Expression.AllOf([element.Closed, .. inPlace]),
            Leaks = leaks is null ? null : Expression.AllOf([leaks, .. inPlace]),
        };
    }

    private static Expression NotDone(IsolationAct act) => new VariableIs(Switch(act), "no");

    private static Variable Choice(string name, string device, IReadOnlyList<string> values) =>
        new()
        {
            Name = name,
            Device = device,
            Kind = VariableKind.Position,
            Values = values,
            Rest = values[0],
        };

    private static string Switch(IsolationAct act) =>
        act.Device is null ? $"{act.Name} discharged" : $"{act.Name} taken out";
}
