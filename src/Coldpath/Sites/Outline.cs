using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>What a part of a site can do to nets that it shares with another part, in any of its states.</summary>
/// <param name="Feeds">What may reach each net from sources in that part, the best grade of each.</param>
/// <param name="Ties">Pairs of nets that it may link, the best grade of each.</param>
/// <param name="Power">Nets that feed loads there through main poles.</param>
internal sealed record Outline(
    IReadOnlyList<Feed> Feeds,
    IReadOnlyList<Tie> Ties,
    IReadOnlyList<string> Power
)
{
    public static readonly Outline Nothing = new([], [], []);

    public bool Says(Outline other) =>
        Feeds.SequenceEqual(other.Feeds)
        && Ties.SequenceEqual(other.Ties)
        && Power.SequenceEqual(other.Power);

    /// <summary>All that any of them may do.</summary>
    public static Outline OfAll(IEnumerable<Outline> outlines)
    {
        var all = outlines.ToArray();
        return all.Length == 1
            ? all[0]
            : new(
                Best(all.SelectMany(o => o.Feeds)),
                Best(all.SelectMany(o => o.Ties)),
                [.. all.SelectMany(o => o.Power).Distinct().Order(StringComparer.Ordinal)]
            );
    }

    /// <summary>Each conductor at each net once, at its best; in a total order.</summary>
    public static IReadOnlyList<Feed> Best(IEnumerable<Feed> feeds) =>
        [
            .. feeds
                .GroupBy(f => (f.Joint, f.Source.Name, f.Conductor.Name))
                .Select(g => g.MinBy(f => f.Grade)!)
                .OrderBy(f => f.Joint, StringComparer.Ordinal)
                .ThenBy(f => f.Source.Name, StringComparer.Ordinal)
                .ThenBy(f => f.Conductor.Name, StringComparer.Ordinal),
        ];

    /// <summary>
    /// What matters of the feeds at each net: every conductor that may come through switches alone; where there is none,
    /// the one of the highest voltage that may come through loads. All of them come and go as they please, so what is
    /// left out could bring about nothing more; earthed conductors make nothing live.
    /// </summary>
    public static IEnumerable<Feed> Deciding(IEnumerable<Feed> feeds) =>
        feeds
            .Where(f => f.Grade < Grade.Loose || !f.Source.Earthed.Contains(f.Conductor.Name))
            .GroupBy(f => f.Joint)
            .SelectMany(at =>
                at.Any(f => f.Grade < Grade.Loose && !f.Source.Earthed.Contains(f.Conductor.Name))
                    ? at.Where(f => f.Grade < Grade.Loose)
                    :
                    [
                        .. at.Where(f => f.Grade < Grade.Loose),
                        .. at.Where(f => f.Grade == Grade.Loose)
                            .OrderBy(f => f.Source.Supply.ExtraLow)
                            .ThenByDescending(f => Math.Abs(f.Conductor.Volts))
                            .Take(1),
                    ]
            );

    public static IReadOnlyList<Tie> Best(IEnumerable<Tie> ties) =>
        [
            .. ties.GroupBy(t => (t.A, t.B))
                .Select(g => g.MinBy(t => t.Grade)!)
                .OrderBy(t => t.A, StringComparer.Ordinal)
                .ThenBy(t => t.B, StringComparer.Ordinal),
        ];
}

/// <summary>A conductor of a source that may reach a shared net.</summary>
/// <param name="Joint">The shared net.</param>
/// <param name="Grade">How well, at best.</param>
/// <param name="Through">Devices that every way through switches passes, nearest first: one that isolates, one that clears a short.</param>
internal sealed record Feed(
    Source Source,
    SupplyConductor Conductor,
    string Joint,
    Grade Grade,
    Through Through
);

/// <summary>What stands between a source and a shared net, whatever way the current takes.</summary>
/// <param name="Isolator">An isolating device under its name in the site; null when there is none.</param>
/// <param name="Clears">A device that opens when there is a short behind it.</param>
internal sealed record Through(NetlistDevice? Isolator, bool Clears)
{
    public static readonly Through Nothing = new(null, false);
}

/// <summary>A supply, or a converter's output, as others see it.</summary>
/// <param name="Name">In the site, "B0/MAINS".</param>
/// <param name="Home">The part that holds it.</param>
/// <param name="Supply">In that part's own names.</param>
/// <param name="Earthed">Names of its conductors that are bonded to earth there.</param>
internal sealed record Source(string Name, string Home, Supply Supply, EquatableList<string> Earthed);

/// <summary>Two shared nets that may be linked.</summary>
internal sealed record Tie(string A, string B, Grade Grade);
