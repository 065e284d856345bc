using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Puts into a netlist, after its own variables, one for each isolating act, and if asked for one that says which
/// conductor, if any, is broken. Only what decides what is live is left of the rest: no moves, no intents.
/// </summary>
internal static class Switches
{
    public const string No = "no";
    public const string Yes = "yes";

    /// <summary>The variable that says which conductor is broken; <see cref="Whole"/> for none.</summary>
    public const string Broken = "broken conductor";
    public const string Whole = "none";

    /// <summary>The variable that says whether the act is done.</summary>
    public static string Of(IsolationAct act) =>
        act.Device is null ? $"{act.Name} discharged" : $"{act.Name} taken out";

    public static IEnumerable<string> Conductors(Netlist netlist) =>
        netlist.Elements.Where(e => e.Type == ElementType.Conductor).Select(e => e.Id);

    public static Netlist PutIn(Netlist netlist, IReadOnlyList<IsolationAct> acts, bool breaking)
    {
        var doneBy = acts.SelectMany(a =>
                (a.Device?.Isolates?.Elements ?? []).Select(e => (Element: e, Act: a))
            )
            .ToLookup(p => p.Element, p => p.Act);
        var stored = acts.Where(a => a.Store is not null).ToDictionary(a => a.Name);
        return new()
        {
            Panel = netlist.Panel,
            Earth = netlist.Earth,
            Nets = netlist.Nets,
            Couplings = netlist.Couplings,
            Variables = [.. Variables(netlist, acts, breaking)],
            Elements = [.. netlist.Elements.Select(e => Switched(e, doneBy[e.Id], breaking))],
            Supplies = [.. netlist.Supplies.Select(Discharged)],
            Converters = [.. netlist.Converters.Select(c => c with { Output = Discharged(c.Output) })],
        };

        Supply Discharged(Supply supply) =>
            stored.TryGetValue(supply.Name, out var act)
                ? supply with
                {
                    Present = Expression.AllOf(supply.Present, NotDone(act)),
                }
                : supply;
    }

    private static IEnumerable<Variable> Variables(
        Netlist netlist,
        IEnumerable<IsolationAct> acts,
        bool breaking
    )
    {
        var own = netlist.Variables.Select(v => v with { Moves = [] });
        var switches = acts.Select(a => Choice(Of(a), a.Name, [No, Yes]));
        return breaking
            ? [.. own, .. switches, Choice(Broken, "", [Whole, .. Conductors(netlist)])]
            : own.Concat(switches);
    }

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

    private static Expression NotDone(IsolationAct act) => new VariableIs(Of(act), No);

    private static Variable Choice(string name, string device, IReadOnlyList<string> values) =>
        new()
        {
            Name = name,
            Device = device,
            Kind = VariableKind.Position,
            Values = values,
            Rest = values[0],
        };
}
