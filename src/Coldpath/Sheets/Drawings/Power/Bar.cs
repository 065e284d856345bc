namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A trunk as its channel sees it: how far it reaches, and what leaves it upwards and downwards where.</summary>
internal sealed record Bar(int Joint, int From, int To, IReadOnlyList<int> Up, IReadOnlyList<int> Down)
{
    public bool Touches(Bar other) => From <= other.To && other.From <= To;

    public bool Spans(int x) => From < x && x < To;

    /// <summary>How often the two cross when this one lies above.</summary>
    public int CrossingsAbove(Bar lower) =>
        Joint == lower.Joint ? 0 : Down.Count(lower.Spans) + lower.Up.Count(Spans);

    /// <summary>Bars of the trunks of one channel, in their order.</summary>
    public static IReadOnlyList<Bar> Of(IReadOnlyList<Trunk> trunks, RoutePlan plan, Across across) =>
        [.. trunks.Select(t => Of(t, plan, across))];

    private static Bar Of(Trunk trunk, RoutePlan plan, Across across)
    {
        var up = new List<int>();
        var down = new List<int>();
        var all = new List<int>();
        foreach (var riser in trunk.Risers)
        {
            var x = across.Of(riser);
            all.Add(x);
            if (!riser.IsStraight)
                (riser.ComesDown ? up : down).Add(x);
        }
        for (var i = 0; i < plan.Links.Count; i++)
            if (plan.Links[i].Upper == trunk || plan.Links[i].Lower == trunk)
            {
                all.Add(across.OfLink(i));
                (plan.Links[i].Upper == trunk ? down : up).Add(across.OfLink(i));
            }
        return new(trunk.Joint, all.Min(), all.Max(), up, down);
    }
}
