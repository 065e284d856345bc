using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>Which conductors come to which nets, and what voltage that makes between them.</summary>
internal sealed class Feeding(Mesh mesh, Sources sources)
{
    private readonly Dictionary<(Grade, Polarity?, int Net), Spread> spreads = [];

    private DiagramTable Table => mesh.Table;

    /// <summary>The source is on and reaches the net at the grade, through diodes in its own direction.</summary>
    public Diagram Reaches(Source source, int net, Grade grade) =>
        Table.And(source.On, Way(source.Net, net, grade, source.Conductor.Polarity));

    /// <summary>The source is on and comes to the net at the grade without diodes (at grade loose with them).</summary>
    private Diagram Comes(Source source, int net, Grade grade) =>
        Table.And(source.On, Way(source.Net, net, grade, null));

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
                Comes(three.First, a, grade),
                Comes(three.Second, b, grade),
                Comes(three.Third, c, grade)
            );
        var fed = Table.AnyOf(threes);
        return fed.IsFalse
            ? fed
            : Table.AllOf(fed, !mesh.Joined(a, b), !mesh.Joined(b, c), !mesh.Joined(a, c));
    }

    /// <summary>Exactly two different voltages of some one supply come to the three nets by load reach.</summary>
    public Diagram Single(params IReadOnlyList<int> nets) =>
        Table.AnyOf(sources.Lasting.Select(supply => TwoVoltages(supply, nets)));

    private Diagram TwoVoltages(IEnumerable<Source> supply, IReadOnlyList<int> nets)
    {
        Diagram none = Diagram.True,
            one = Diagram.False,
            two = Diagram.False;
        foreach (var voltage in ByVoltage(supply))
        {
            var comes = Table.AnyOf(voltage.SelectMany(s => nets.Select(net => Comes(s, net, Grade.Load))));
            two = Table.IfThenElse(comes, one, two);
            one = Table.IfThenElse(comes, none, one);
            none = Table.Except(none, comes);
        }
        return two;
    }

    private static List<List<Source>> ByVoltage(IEnumerable<Source> supply)
    {
        var voltages = new List<List<Source>>();
        foreach (var source in supply)
            if (voltages.Find(v => v[0].SameVoltage(source)) is { } same)
                same.Add(source);
            else
                voltages.Add([source]);
        return voltages;
    }

    private Diagram Way(int from, int to, Grade grade, Polarity? polarity)
    {
        var key = (grade, polarity, from);
        if (!spreads.TryGetValue(key, out var spread))
        {
            spread = mesh.Reach(grade, polarity).Spread(KeyValuePair.Create(from, Diagram.True));
            spreads.Add(key, spread);
        }
        return spread[to];
    }
}
