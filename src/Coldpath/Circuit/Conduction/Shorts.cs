using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Supplies whose voltages are joined so that they cannot all hold. Conductors of one supply are compared pair by
/// pair; supplies that can come together are taken as a group, and each way its conductors may be joined is judged.
/// </summary>
internal sealed class Shorts
{
    private readonly Mesh mesh;
    private readonly Sources sources;
    private readonly Feeding feeding;
    private readonly Diagram[] shorted;

    public Shorts(Mesh mesh, Sources sources, Feeding feeding)
    {
        this.mesh = mesh;
        this.sources = sources;
        this.feeding = feeding;
        shorted = new Diagram[sources.SupplyCount];
        Array.Fill(shorted, Diagram.False);
        foreach (var supply in sources.Lasting)
            Add(supply[0].SupplyIndex, Table.Or(WithinSupply(supply), ThroughDiodes(supply)));
        foreach (var group in Meeting())
            Judge(group, 0, [], Diagram.True);
    }

    private DiagramTable Table => mesh.Table;

    /// <summary>Some supply is part of a short.</summary>
    public Diagram Any => Table.AnyOf(shorted);

    public Diagram Of(int supply) => shorted[supply];

    /// <summary>The diode joins plus to minus in its own direction.</summary>
    public Diagram Of(Link diode)
    {
        var pairs =
            from supply in sources.Lasting
            from plus in supply
            where plus.Conductor.Polarity == Polarity.Plus
            from minus in supply
            where minus.Conductor.Polarity == Polarity.Minus
            select Of(diode, plus, minus);
        return Table.AnyOf(pairs);
    }

    /// <summary>Both supplies are on, and they have conductors in one and only one common solid component.</summary>
    public Diagram JoinedAtOnePoint(int one, int other) =>
        Table.Except(Table.AnyOf(Common(one, other).Select(c => c.When)), JoinedTwice(one, other));

    /// <summary>Both supplies are on, and they have conductors in two or more common solid components.</summary>
    public Diagram JoinedTwice(int one, int other)
    {
        var common = Common(one, other).ToArray();
        var twice =
            from first in common
            from second in common
            select Table.AllOf(first.When, second.When, !mesh.Joined(first.Net, second.Net));
        return Table.AnyOf(twice);
    }

    private IEnumerable<(int Net, Diagram When)> Common(int one, int other) =>
        from a in sources.BySupply[one]
        from b in sources.BySupply[other]
        let when = Meet(a, b)
        where !when.IsFalse
        select (a.Net, when);

    private void Add(int supply, Diagram condition) => shorted[supply] = Table.Or(shorted[supply], condition);

    private Diagram Meet(Source a, Source b)
    {
        var on = Table.And(a.On, b.On);
        return on.IsFalse ? on : Table.And(on, mesh.Joined(a.Net, b.Net));
    }

    private Diagram WithinSupply(IReadOnlyList<Source> supply)
    {
        var pairs =
            from a in supply
            from b in supply
            where a.Index < b.Index && !a.SameVoltage(b)
            select Meet(a, b);
        return Table.AnyOf(pairs);
    }

    private Diagram ThroughDiodes(IReadOnlyList<Source> supply)
    {
        var ways =
            from diode in mesh.Links
            where diode.Type == ElementType.Diode && !diode.Closed.IsFalse
            from plus in supply
            where plus.Conductor.Polarity == Polarity.Plus
            from minus in supply
            where minus.Conductor.Polarity == Polarity.Minus
            select Of(diode, plus, minus);
        return Table.AnyOf(ways);
    }

    private Diagram Of(Link diode, Source plus, Source minus) =>
        Table.AllOf(
            diode.Closed,
            feeding.Reaches(plus, diode.A, Grade.Solid),
            feeding.Reaches(minus, diode.B, Grade.Solid)
        );

    /// <summary>
    /// The conductors that may share a component with another, by supplies that some state may bring together. A
    /// supply with only one such conductor can be on no cycle.
    /// </summary>
    private IEnumerable<Source[]> Meeting()
    {
        var left = sources.Lasting.SelectMany(s => s).ToList();
        int before;
        do
        {
            before = left.Count;
            left.RemoveAll(a => !left.Exists(b => b != a && !Meet(a, b).IsFalse));
            left.RemoveAll(a => left.Count(b => b.SupplyIndex == a.SupplyIndex) < 2);
        } while (left.Count < before);

        while (left.Count > 0)
        {
            var group = new HashSet<int> { left[0].SupplyIndex };
            while (left.Find(a => !group.Contains(a.SupplyIndex) && Touches(a)) is { } touching)
                group.Add(touching.SupplyIndex);
            if (group.Count > 1)
                yield return [.. left.Where(a => group.Contains(a.SupplyIndex))];
            left.RemoveAll(a => group.Contains(a.SupplyIndex));

            bool Touches(Source a) => left.Exists(b => group.Contains(b.SupplyIndex) && !Meet(a, b).IsFalse);
        }
    }

    /// <summary>
    /// Splits the condition by the component the next conductor lies in: none when it is off, that of an earlier one,
    /// or one of its own.
    /// </summary>
    private void Judge(
        Source[] group,
        int next,
        List<(Source Source, int Component)> placed,
        Diagram condition
    )
    {
        if (condition.IsFalse)
            return;
        if (next == group.Length)
        {
            foreach (var supply in VoltageCycles.Shorted(placed))
                Add(supply, condition);
            return;
        }
        var source = group[next];
        Judge(group, next + 1, placed, Table.Except(condition, source.On));
        var left = Table.And(condition, source.On);
        foreach (var component in placed.DistinctBy(p => p.Component).ToArray())
        {
            var joined = mesh.Joined(component.Source.Net, source.Net);
            JudgePlaced(component.Component, Table.And(left, joined));
            left = Table.Except(left, joined);
        }
        JudgePlaced(next, left);

        void JudgePlaced(int component, Diagram when)
        {
            placed.Add((source, component));
            Judge(group, next + 1, placed, when);
            placed.RemoveAt(placed.Count - 1);
        }
    }
}
