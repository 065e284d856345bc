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

    /// <summary>What may reach nets besides once a contact in another part has welded.</summary>
    public IReadOnlyList<Feed> Welded { get; init; } = [];

    public bool Says(Outline other) =>
        Feeds.SequenceEqual(other.Feeds)
        && Ties.SequenceEqual(other.Ties)
        && Power.SequenceEqual(other.Power);

    /// <summary>Of several bundles.</summary>
    public static Outline Together(IEnumerable<Outline> outlines)
    {
        var all = outlines.ToArray();
        return new(
            [.. all.SelectMany(o => o.Feeds)],
            Best(all.SelectMany(o => o.Ties)),
            [.. all.SelectMany(o => o.Power).Distinct()]
        );
    }

    public static IReadOnlyList<Tie> Best(IEnumerable<Tie> ties) =>
        [
            .. ties.GroupBy(t => (t.A, t.B))
                .Select(g => g.MinBy(t => t.Grade)!)
                .OrderBy(t => t.A, StringComparer.Ordinal)
                .ThenBy(t => t.B, StringComparer.Ordinal),
        ];
}

/// <summary>A conductor of a source, or of each of several that are alike, that may reach a shared net.</summary>
/// <param name="Sources">Whose conductor.</param>
/// <param name="Conductor">Of the first of them; the others have one of the same name.</param>
/// <param name="Joint">The shared net.</param>
/// <param name="Grade">How well, at best.</param>
/// <param name="Through">Devices that every way of that sort, through switches or through loads as well, passes.</param>
internal sealed record Feed(
    Alike Sources,
    SupplyConductor Conductor,
    string Joint,
    Grade Grade,
    Through Through
)
{
    /// <summary>It comes through loads.</summary>
    public bool IsLoose => Grade == Grade.Loose;

    /// <summary>The conductor is bonded to earth at home.</summary>
    public bool IsEarthed => Source.Earthed.Contains(Conductor.Name);

    /// <summary>The only source, or the first.</summary>
    public Source Source => Sources.First;
}

/// <summary>What stands between a source and a shared net, whatever way the current takes.</summary>
/// <param name="Isolator">An isolating device under its name in the site; null when there is none.</param>
/// <param name="Clears">A device that opens when there is a short behind it.</param>
internal sealed record Through(NetlistDevice? Isolator, bool Clears)
{
    public static readonly Through Nothing = new(null, false);
}

/// <summary>Two shared nets that may be linked.</summary>
internal sealed record Tie(string A, string B, Grade Grade);
