using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>The best way from one net of a part to another, with what stands behind the part's other bundles.</summary>
/// <param name="spread">In the part, and through what stands behind its other bundles.</param>
/// <param name="welded">Contacts may weld: a way may pass what is never closed together.</param>
internal sealed class BestWays(Spread spread, bool welded)
{
    /// <summary>Beyond so many a way is taken as possible.</summary>
    private const int MostVariables = 10;

    private static readonly Way None = new(Reached.Not, []);

    private readonly Dictionary<(string, Grade, string, string, string), Reached> reaches = [];
    private readonly Dictionary<(string, Grade, string, string, string), Way> known = [];

    /// <summary>The grade at the end, and the tags of devices that are passed.</summary>
    public sealed record Way(Grade Grade, IReadOnlyCollection<string> Devices);

    /// <param name="start">A net.</param>
    /// <param name="grade">The grade at which it is reached.</param>
    /// <param name="end">A net.</param>
    /// <param name="but">A converter whose windings are left out.</param>
    /// <param name="without">A device whose elements are taken out.</param>
    public Way Best(string start, Grade grade, string end, string but = "", string without = "")
    {
        var key = (start, grade, end, but, without);
        if (!known.TryGetValue(key, out var way))
            known.Add(key, way = Search(start, grade, end, but, without, Passing.Anything));
        return way;
    }

    private Way Search(string start, Grade grade, string end, string but, string without, Passing passing)
    {
        var reached = Reach(start, grade, but, without, passing);
        if (reached[end] == Reached.Not)
            return None;
        Link[] way = [.. reached.WayTo(end)];
        if (welded || passing.Count > MostVariables || passing.Conflict(way) is not { } conflict)
            return new(reached[end], way.Select(l => l.Device).ToHashSet(StringComparer.Ordinal));
        var one = Search(start, grade, end, but, without, passing.With(conflict.Variable, conflict.Allowed));
        if (one.Grade == reached[end])
            return one;
        var other = Search(
            start,
            grade,
            end,
            but,
            without,
            passing.With(conflict.Variable, ~conflict.Allowed)
        );
        return one.Grade <= other.Grade ? one : other;
    }

    private Reached Reach(string start, Grade grade, string but, string without, Passing passing)
    {
        var key = (start, grade, but, without, passing.Text);
        if (!reaches.TryGetValue(key, out var reached))
            reaches.Add(key, reached = spread.Reach(start, grade, but, without, passing));
        return reached;
    }
}
