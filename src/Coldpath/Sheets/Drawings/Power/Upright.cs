namespace Coldpath.Sheets.Drawings.Power;

/// <summary>An upright wire as the level ones see it.</summary>
/// <param name="X">Where it stands across.</param>
/// <param name="From">Its upper end, as <see cref="Depth"/>.</param>
/// <param name="To">Its lower end, as <see cref="Depth"/>.</param>
internal sealed record Upright(int Joint, int X, int From, int To)
{
    private const int Tracks = 1 << 12;

    /// <summary>A place from the top to the bottom of all channels, as a number.</summary>
    public static int Depth(int channel, int track) => channel * Tracks + track + 1;

    private static int Top(int channel) => channel * Tracks;

    private static int Bottom(int channel) => channel * Tracks + Tracks - 1;

    public static IEnumerable<Upright> Of(
        RoutePlan plan,
        Across across,
        IReadOnlyDictionary<Trunk, int> tracks
    )
    {
        var at = new Dictionary<Riser, Trunk>();
        foreach (var trunk in plan.Trunks)
        foreach (var riser in trunk.Risers)
            at[riser] = trunk;
        foreach (var riser in plan.Risers)
        {
            var (from, to) = (Top(riser.From), Bottom(riser.To));
            if (!riser.IsStraight && at.TryGetValue(riser, out var trunk))
                (from, to) = riser.ComesDown ? (from, Place(trunk)) : (Place(trunk), to);
            yield return new(riser.Joint, across.Of(riser), from, to);
        }
        for (var i = 0; i < plan.Links.Count; i++)
            yield return new(
                plan.Links[i].Upper.Joint,
                across.OfLink(i),
                Place(plan.Links[i].Upper),
                Place(plan.Links[i].Lower)
            );

        int Place(Trunk trunk) => Depth(trunk.Channel, tracks[trunk]);
    }
}
