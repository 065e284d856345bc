using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>Which conductors come to which nets, and what voltage that makes between them.</summary>
internal sealed class Feeding(Mesh mesh, Sources sources)
{
    private readonly Dictionary<(Grade, Polarity, int Net), Spread> spreads = [];

    private DiagramTable Table => mesh.Table;

    /// <summary>The source is on and reaches the net at the grade.</summary>
    public Diagram Reaches(Source source, int net, Grade grade) =>
        Table.And(source.On, Way(source, net, grade));

    /// <summary>
    /// Two nets in different solid components, each reached by one of two conductors of a supply, with a voltage
    /// between these that lies in the band.
    /// </summary>
    public Diagram Energised(int a, int b, Grade grade, double low, double? high)
    {
        var pairs =
            from supply in sources.Lasting
            from first in supply
            from second in supply
            where first.InBand(second, low, high)
            select Table.AllOf(Reaches(first, a, grade), Reaches(second, b, grade));
        var fed = Table.AnyOf(pairs);
        return fed.IsFalse ? fed : Table.Except(fed, mesh.Joined(a, b));
    }

    /// <summary>Three nets in three solid components, reached by three conductors with equal mutual voltages.</summary>
    public Diagram Fed(int a, int b, int c, PhaseOrder order, Grade grade)
    {
        var threes =
            from supply in sources.Lasting
            from three in Phases.Threes(supply)
            where order == PhaseOrder.Any || Phases.Order(three) == order
            select Table.AllOf(
                Reaches(three.First, a, grade),
                Reaches(three.Second, b, grade),
                Reaches(three.Third, c, grade)
            );
        var fed = Table.AnyOf(threes);
        return fed.IsFalse
            ? fed
            : Table.AllOf(fed, !mesh.Joined(a, b), !mesh.Joined(b, c), !mesh.Joined(a, c));
    }

    /// <summary>Exactly two different voltages come to the three nets by load reach.</summary>
    public Diagram Single(params IReadOnlyList<int> nets)
    {
        Diagram none = Diagram.True,
            one = Diagram.False,
            two = Diagram.False;
        foreach (var voltage in Voltages())
        {
            var comes = Table.AnyOf(voltage.SelectMany(s => nets.Select(net => Reaches(s, net, Grade.Load))));
            two = Table.IfThenElse(comes, one, two);
            one = Table.IfThenElse(comes, none, one);
            none = Table.Except(none, comes);
        }
        return two;
    }

    /// <summary>Sources by voltage: equal ones of one synchronised group together.</summary>
    private List<List<Source>> Voltages()
    {
        var voltages = new List<List<Source>>();
        foreach (var source in sources.Lasting.SelectMany(s => s))
        {
            var same = voltages.Find(v =>
                v[0].Supply.Group == source.Supply.Group && v[0].SameVoltage(source)
            );
            if (same is null)
                voltages.Add([source]);
            else
                same.Add(source);
        }
        return voltages;
    }

    /// <summary>A way from the source's net to the net, whether the source is on or not.</summary>
    public Diagram Way(Source source, int net, Grade grade)
    {
        var key = (grade, source.Conductor.Polarity, source.Net);
        if (!spreads.TryGetValue(key, out var spread))
        {
            spread = mesh.Reach(grade, source.Conductor.Polarity)
                .Spread(KeyValuePair.Create(source.Net, Diagram.True));
            spreads.Add(key, spread);
        }
        return spread[net];
    }
}
