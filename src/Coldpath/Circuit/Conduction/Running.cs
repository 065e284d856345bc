using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>In which of its listed connections a load runs, and which way round.</summary>
internal sealed class Running(Mesh mesh, Sources sources)
{
    private readonly SeriesWays ways = new(mesh);
    private readonly Dictionary<(LoadMode, Turning), Diagram> known = [];

    private DiagramTable Table => mesh.Table;

    /// <summary>The load runs in some listed connection in that direction.</summary>
    public Diagram Runs(Load load, Turning turns) => Table.AnyOf(load.Modes.Select(m => Runs(m, turns)));

    /// <summary>The load runs in this connection in that direction.</summary>
    public Diagram Runs(LoadMode mode, Turning turns)
    {
        if (!known.TryGetValue((mode, turns), out var runs))
        {
            runs = Find(mode, turns);
            known.Add((mode, turns), runs);
        }
        return runs;
    }

    private Diagram Find(LoadMode mode, Turning turns)
    {
        var connected = Table.AllOf(
            mode.Joined.Select(p => mesh.Joined(mesh.Net(p.A), mesh.Net(p.B)))
                .Concat(mode.Apart.Select(p => !mesh.Joined(mesh.Net(p.A), mesh.Net(p.B))))
        );
        if (connected.IsFalse)
            return connected;
        int[] feed = [.. mode.Feed.Select(mesh.Net)];
        var fed =
            from supply in sources.Lasting
            from feeders in Feeders(supply, feed.Length)
            where turns == Turning.Any || Direction(feeders, mode.Turns) == turns
            select Fed(feeders, feed, connected);
        return Table.AnyOf(fed);
    }

    /// <summary>The ordered choices of a supply's conductors that make a feed of two or three terminals.</summary>
    private static IEnumerable<Source[]> Feeders(IReadOnlyList<Source> supply, int terminals) =>
        terminals switch
        {
            2 => from a in supply from b in supply where a != b && !a.SameVoltage(b) select new[] { a, b },
            3 => Phases.Threes(supply).Select(t => new[] { t.First, t.Second, t.Third }),
            _ => throw new ArgumentException(
                "a connection is fed at two or three terminals",
                nameof(terminals)
            ),
        };

    /// <summary>
    /// The way round of a connection that turns as <paramref name="whenForward"/> says when its feed comes forward.
    /// Two alternating conductors have no order of their own.
    /// </summary>
    private static Turning Direction(Source[] feeders, Turning whenForward)
    {
        var forward =
            feeders.Length == 3
                ? Phases.Order(new(feeders[0], feeders[1], feeders[2])) == PhaseOrder.Forward
                : !feeders[0].Supply.Direct || feeders[0].Volts.Real > feeders[1].Volts.Real;
        return forward ? whenForward
            : whenForward == Turning.Forward ? Turning.Reverse
            : whenForward == Turning.Reverse ? Turning.Forward
            : Turning.Any;
    }

    /// <summary>Each terminal is reached by its own conductor, the ways sharing no solid component.</summary>
    private Diagram Fed(Source[] feeders, int[] feed, Diagram when)
    {
        var on = feeders.Aggregate(when, (all, source) => Table.And(all, source.On));
        return Choose(0, [], on);

        Diagram Choose(int next, IReadOnlyList<Way> chosen, Diagram condition)
        {
            if (condition.IsFalse || next == feed.Length)
                return condition;
            var choices =
                from way in ways.Between(feeders[next].Net, feed[next])
                let apart = Table.AllOf(chosen.Select(earlier => ways.Apart(earlier, way)))
                select Choose(next + 1, [.. chosen, way], Table.AllOf(condition, way.When, apart));
            return Table.AnyOf(choices);
        }
    }
}
