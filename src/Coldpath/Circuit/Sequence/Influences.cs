using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// All guards of a netlist by which its variables decide what is live, with those variables that have been given a value
/// put in.
/// </summary>
internal sealed class Influences
{
    private readonly StateSpace space;
    private readonly List<Influence> all;
    private readonly HashSet<int>[] naming;
    private readonly HashSet<int> locked;

    public Influences(Netlist netlist)
    {
        space = new(netlist, new DiagramTable(), [.. Enumerable.Range(0, netlist.Variables.Count)]);
        all = [.. Of(netlist).Where(i => !i.Condition.IsConstant).Distinct()];
        naming = [.. netlist.Variables.Select(_ => new HashSet<int>())];
        foreach (var (index, influence) in all.Index())
        foreach (var variable in Named(influence.Condition))
            naming[variable].Add(index);
        locked = [.. netlist.Converters.SelectMany(c => Guards.Variables(c.When)).Select(space.IndexOf)];
    }

    private DiagramTable Table => space.Table;

    /// <summary>
    /// With this value as much is live as with any other, whatever else is the case: every guard that the variable is
    /// named in is as it is with the other, or holds more and helps.
    /// </summary>
    public bool IsWorst(int variable, int value) =>
        !locked.Contains(variable)
        && naming[variable]
            .All(i => Others(variable, value).All(other => Outdoes(i, variable, value, other)));

    /// <summary>
    /// With this value each guard that the variable is named in can still come out either way, by variables that are
    /// free and named in no other guard.
    /// </summary>
    public bool IsSpare(int variable, int value, IReadOnlySet<int> free) =>
        !locked.Contains(variable) && naming[variable].All(i => LeavesOpen(i, variable, value, free));

    /// <summary>Gives the variable a value.</summary>
    public void Give(int variable, int value)
    {
        foreach (var index in naming[variable].ToArray())
        {
            var before = Named(all[index].Condition);
            all[index] = all[index] with { Condition = With(index, variable, value) };
            foreach (var dropped in before.Except(Named(all[index].Condition)))
                naming[dropped].Remove(index);
        }
    }

    private IEnumerable<int> Others(int variable, int value) =>
        Enumerable.Range(0, space.Variables[variable].Values.Count).Where(other => other != value);

    private bool Outdoes(int index, int variable, int value, int other)
    {
        var (mine, theirs) = (With(index, variable, value), With(index, variable, other));
        return mine == theirs || all[index].Helps && Table.Entails(theirs, mine);
    }

    private bool LeavesOpen(int index, int variable, int value, IReadOnlySet<int> free)
    {
        var guard = With(index, variable, value);
        var own = Named(guard).Where(v => free.Contains(v) && !locked.Contains(v) && naming[v].Count == 1);
        var bits = space.Bits(own);
        return Table.Exists(guard, bits).IsTrue && Table.Exists(!guard, bits).IsTrue;
    }

    private Diagram With(int index, int variable, int value) =>
        Table.Restrict(all[index].Condition, space.Code(variable, value));

    private int[] Named(Diagram condition)
    {
        var levels = Table.Support(condition).ToHashSet();
        return levels.Count == 0
            ? []
            :
            [
                .. Enumerable
                    .Range(0, space.Variables.Count)
                    .Where(v => space.LevelsOf(v).Any(levels.Contains)),
            ];
    }

    private IEnumerable<Influence> Of(Netlist netlist)
    {
        var known = Helping.IsKnown(netlist);
        var helping = new Helping(netlist, e => !space.Guard(e.Closed).IsFalse);
        foreach (var element in netlist.Elements)
        {
            var closed = space.Guard(element.Closed);
            yield return new(closed, known && helping.Helps(element));
            if (Leaks(element) is { } leaks)
                yield return new(Table.Or(closed, space.Guard(leaks)), known);
        }
        foreach (var supply in netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output)))
        {
            yield return new(space.Guard(supply.Present), known);
            foreach (var conductor in supply.Conductors)
                yield return new(space.Guard(conductor.Present), known);
        }
    }

    private static Expression? Leaks(Element element) =>
        element.Leaks
        ?? (element.Type == ElementType.Semiconductor ? Expression.Negate(element.Closed) : null);
}
