namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Places rungs that hang together below each other, and the nodes that join them.</summary>
internal sealed class BlockLayout
{
    /// <summary>Between rungs.</summary>
    public const double Gap = 4;

    /// <summary>What a node needs that leads back to the left under its rung.</summary>
    private const double Lane = 3;

    /// <summary>Between upright lines.</summary>
    private const double Step = 8;

    private readonly RungDrafting drafting;
    private readonly LadderFrame frame;
    private readonly LoadColumn column;
    private readonly IReadOnlyList<double> needs;
    private readonly Dictionary<Stem, StemPlace> stems = [];
    private readonly List<PlacedRung> placed = [];
    private double y;
    private double overflow;

    private BlockLayout(
        RungDrafting drafting,
        LadderFrame frame,
        LoadColumn column,
        IReadOnlyList<double> needs
    ) => (this.drafting, this.frame, this.column, this.needs) = (drafting, frame, column, needs);

    /// <param name="plans">The rungs of one block.</param>
    /// <param name="needs">The width that each rung of the ladder had better have, what hangs from it included.</param>
    public static LadderBlock Of(
        IReadOnlyList<RungPlan> plans,
        LadderFacts facts,
        RungDrafting drafting,
        LadderFrame frame,
        LoadColumn column,
        IReadOnlyList<double> needs
    )
    {
        var layout = new BlockLayout(drafting, frame, column, needs);
        foreach (var plan in plans)
            layout.Place(plan);
        return layout.Drawn(facts);
    }

    private void Place(RungPlan plan)
    {
        if (plan.From is { Givers.Count: > 0 } from && from.Takers[0] == plan.Rung.Index)
            Open(from);
        var flag = FlagOf(plan);
        var start = StartOf(plan, flag);
        var edge = EdgeOf(plan, frame);
        var pieces = RungPieces.Of(plan, drafting, RungDrafting.Inside(edge - start));
        var rows = column.Place(pieces, drafting, start, edge);
        y += new[] { rows.Up, flag?.Up ?? 0, PlacedRung.LeastHalf }.Max();
        placed.Add(new(plan, rows, flag, y));
        y = placed[^1].Bottom + Gap;
        overflow = Math.Max(overflow, rows.Width - edge);
        if (plan.To is { IsDrawn: true } to)
        {
            var riser = Math.Max(stems.GetValueOrDefault(to)?.Riser ?? 0, rows.Width + 1);
            stems[to] = new(riser, riser, y - Gap);
        }
    }

    /// <summary>Where what stands in a rung must end.</summary>
    public static double EdgeOf(RungPlan plan, LadderFrame frame) =>
        plan.ToRail ? frame.Right - 2
        : plan.To is { IsDrawn: true } ? frame.Right - LadderFrame.Aside - 2
        : frame.Right - LadderFrame.Aside;

    /// <summary>The flag of a node that several rungs begin at and none above them gives.</summary>
    private Laid? FlagOf(RungPlan plan) =>
        plan.From is { Givers.Count: 0, IsDrawn: true } stem && stem.Takers[0] == plan.Rung.Index
            ? drafting.End(plan.Rung, plan.Rung.Start!, begins: true)
            : null;

    private double StartOf(RungPlan plan, Laid? flag)
    {
        if (plan.FromRail)
            return frame.Left + 2;
        if (plan.From is not { IsDrawn: true } stem)
            return frame.Left + LadderFrame.Aside;
        if (flag is not null)
            stems[stem] = new(0, frame.Left + LadderFrame.Aside + flag.Width + 1, 0);
        return stems[stem].X + 1.5;
    }

    /// <summary>Chooses where a node's upright line runs: below the end of the rung that gives it, or further to the
    /// left where the rungs below need the room.</summary>
    private void Open(Stem stem)
    {
        var giver = placed[^1].Plan;
        var least = (giver.From is { IsDrawn: true } from ? stems[from].X : frame.Left) + Step;
        var (riser, need) = (stems[stem].Riser, stem.Takers.Max(t => needs[t]));
        var x = Math.Max(least, Math.Min(riser, frame.Right - need));
        if (x >= riser)
            return;
        y += Lane;
        stems[stem] = new(riser, x, y - (Gap + Lane) / 2);
    }

    private LadderBlock Drawn(LadderFacts facts)
    {
        var pen = new Pen(facts.Knots);
        foreach (var rung in placed)
            rung.Draw(pen, frame);
        foreach (var (stem, place) in stems)
            Draw(pen, stem, place);
        return new()
        {
            Section = placed[0].Plan.Section,
            Height = placed[^1].Bottom,
            Overflow = overflow,
            Figures = pen.Figures,
            Wires = [.. pen.Wires.Select(w => w.ToFigure(facts.Shown))],
            LeftTaps = [.. placed.Where(p => p.Plan.FromRail).Select(p => p.In?.Y).OfType<double>()],
            RightTaps = [.. placed.Where(p => p.Plan.ToRail).Select(p => p.Out?.Y).OfType<double>()],
            Rungs = [.. placed.Select(p => p.Plan.Rung)],
            Bottoms = [.. placed.Select(p => p.Bottom)],
        };
    }

    private void Draw(Pen pen, Stem stem, StemPlace place)
    {
        var givers = placed.Where(p => p.Plan.To == stem).ToList();
        var takers = placed.Where(p => p.Plan.From == stem).ToList();
        var knot = givers.Count > 0 ? givers[0].Plan.Rung.End!.In : takers[0].Plan.Rung.Start!.Out;
        foreach (var outOf in givers.Select(g => g.Out).OfType<At>())
            pen.Wire(knot, outOf, outOf with { X = place.Riser });
        foreach (var into in takers.Select(t => t.In).OfType<At>())
            pen.Wire(knot, into with { X = place.X }, into);
        var down = givers.Select(g => g.Out?.Y).OfType<double>();
        var below = takers.Select(t => t.In?.Y).OfType<double>();
        if (takers.Count > 0 && takers[0].Flag is { } flag)
        {
            flag.Draw(pen, new(place.X - 1 - flag.Width, takers[0].Y));
            pen.Wire(knot, new(place.X - 1, takers[0].Y), new(place.X, takers[0].Y));
            pen.Upright(knot, place.X, below, meets: takers[0].Y);
        }
        else if (place.X >= place.Riser)
            pen.Upright(knot, place.Riser, [.. down, .. below]);
        else
        {
            pen.Upright(knot, place.Riser, [.. down, place.Lane]);
            pen.Wire(knot, new(place.Riser, place.Lane), new(place.X, place.Lane));
            pen.Upright(knot, place.X, [place.Lane, .. below]);
        }
    }

    /// <param name="Riser">Where the rungs that give it end.</param>
    /// <param name="X">Where the rungs below begin.</param>
    /// <param name="Lane">The height at which it leads back from there to here.</param>
    private sealed record StemPlace(double Riser, double X, double Lane);
}
