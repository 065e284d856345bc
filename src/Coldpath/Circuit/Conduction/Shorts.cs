using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Supplies whose voltages are joined so that they cannot all hold. Conductors of one supply are compared pair by
/// pair; of synchronised supplies that can come together each way in which their conductors may be joined is judged;
/// of others it is enough that they share a cycle. A block that only synchronised supplies share is the same block
/// when all others are left out, and one with others in it is a short anyway: so the parts are exact together.
/// </summary>
internal sealed class Shorts
{
    private readonly Mesh mesh;
    private readonly Sources sources;
    private readonly Feeding feeding;
    private readonly Diagram[] shorted;
    private readonly Diagram[] driving;

    public Shorts(Mesh mesh, Sources sources, Feeding feeding)
    {
        this.mesh = mesh;
        this.sources = sources;
        this.feeding = feeding;
        shorted = new Diagram[sources.SupplyCount];
        Array.Fill(shorted, Diagram.False);
        driving = new Diagram[sources.All.Count];
        Array.Fill(driving, Diagram.False);
        foreach (var supply in sources.Lasting)
        {
            WithinSupply(supply);
            ThroughDiodes(supply);
        }
        var conductors = sources.Lasting.SelectMany(s => s).ToArray();
        foreach (var synchronised in conductors.GroupBy(c => c.Supply.Group))
        foreach (var group in Meeting(synchronised))
            Judge(group, 0, [], Diagram.True);
        foreach (var group in Meeting(conductors).Where(AreMixed))
            Mixed(new(mesh, group));
    }

    private DiagramTable Table => mesh.Table;

    /// <summary>Some supply is part of a short.</summary>
    public Diagram Any => Table.AnyOf(shorted);

    public Diagram Of(int supply) => shorted[supply];

    /// <summary>The conductor drives the current of a short.</summary>
    public Diagram DrivenBy(Source source) => driving[source.Index];

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

    private void AddDriving(Source source, Diagram condition) =>
        driving[source.Index] = Table.Or(driving[source.Index], condition);

    /// <summary>Two conductors of one supply that are joined, or that a diode joins.</summary>
    private void Add(Source a, Source b, Diagram condition)
    {
        Add(a.SupplyIndex, condition);
        AddDriving(a, condition);
        AddDriving(b, condition);
    }

    private Diagram Meet(Source a, Source b)
    {
        var on = Table.And(a.On, b.On);
        return on.IsFalse ? on : Table.And(on, mesh.Joined(a.Net, b.Net));
    }

    private void WithinSupply(IReadOnlyList<Source> supply)
    {
        foreach (var a in supply)
        foreach (var b in supply.Where(b => a.Index < b.Index && !a.SameVoltage(b)))
            Add(a, b, Meet(a, b));
    }

    private void ThroughDiodes(IReadOnlyList<Source> supply)
    {
        foreach (var diode in mesh.Links.Where(l => l.Type == ElementType.Diode && !l.Closed.IsFalse))
        foreach (var plus in supply.Where(c => c.Conductor.Polarity == Polarity.Plus))
        foreach (var minus in supply.Where(c => c.Conductor.Polarity == Polarity.Minus))
            Add(plus, minus, Of(diode, plus, minus));
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
    private IEnumerable<Source[]> Meeting(IEnumerable<Source> conductors)
    {
        var left = conductors.ToList();
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

    private static bool AreMixed(Source[] group) => group.Any(c => c.Supply.Group != group[0].Supply.Group);

    private void Mixed(MixedCycles cycles)
    {
        foreach (var (supply, when) in cycles.Shorted())
            Add(supply, when);
        foreach (var (conductor, when) in cycles.Driving())
            AddDriving(conductor, when);
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
            foreach (var conductor in VoltageCycles.Driving(placed))
                AddDriving(conductor, condition);
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
