using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>The control circuit as a ladder.</summary>
internal static class LadderLayout
{
    /// <summary>On paper without bounds a rung folds where it is wider than this.</summary>
    private const double Widest = 400;
    private const double Narrowest = 140;

    /// <summary>A step to the next width or page break seldom needs another one.</summary>
    private const int MostTries = 12;

    /// <param name="netlist">Null when the panel has none: rails then bear their names alone.</param>
    /// <param name="shown">What is drawn beyond the wiring.</param>
    /// <param name="width">Millimetres; infinite for as wide as it is best.</param>
    /// <param name="tallest">No block of several rungs is higher than this, in millimetres.</param>
    public static Ladder Of(
        Panel panel,
        Netlist? netlist,
        Division division,
        Shown shown,
        double width,
        double tallest = double.PositiveInfinity
    )
    {
        var breaks = new HashSet<int>();
        var drawn = new LadderDrawing(new(panel, netlist, division, shown, breaks), width);
        for (var i = 0; i < MostTries && drawn.BreaksFor(tallest) is { Count: > 0 } more; i++)
        {
            breaks.UnionWith(more);
            drawn = new(new(panel, netlist, division, shown, breaks), width);
        }
        return drawn.Ladder;
    }

    private sealed class LadderDrawing
    {
        private readonly LadderFacts facts;

        public LadderDrawing(LadderFacts facts, double width)
        {
            this.facts = facts;
            if (double.IsPositiveInfinity(width))
                width = Best();
            Ladder = Drawn(width);
            for (var i = 0; i < MostTries && OverflowOf(Ladder) is > 0.01 and var overflow; i++)
                Ladder = Drawn(Ladder.Width + (overflow * (i + 1)));
        }

        public Ladder Ladder { get; }

        /// <summary>Rungs before which blocks must be cut that are higher than they may be.</summary>
        public IReadOnlyList<int> BreaksFor(double tallest)
        {
            var breaks = new List<int>();
            foreach (var block in Ladder.Blocks.Where(b => b.Height > tallest))
            {
                var top = 0.0;
                for (var i = 1; i < block.Bottoms.Count; i++)
                {
                    if (block.Bottoms[i] - top <= tallest)
                        continue;
                    breaks.Add(block.Rungs[i].Index);
                    top = block.Bottoms[i - 1];
                }
            }
            return breaks;
        }

        private static double OverflowOf(Ladder ladder) =>
            ladder.Blocks.Select(b => b.Overflow).Append(0).Max();

        private Ladder Drawn(double width)
        {
            var drafting = new RungDrafting(facts);
            var frame = LadderFrame.Of(facts.Rungs, width);
            var pieces = Unfolded(drafting);
            var needs = Needs(pieces);
            var ofSection = facts.Plans.ToLookup(p => p.Section, p => pieces[p.Rung.Index]);
            var columns = facts.Sections.Select((_, s) => LoadColumn.Of(ofSection[s], frame)).ToList();
            var rungs = facts
                .Plans.GroupBy(p => p.Block)
                .Select(g =>
                    BlockLayout.Of([.. g], facts, drafting, frame, columns[g.First().Section], needs)
                );
            return new(
                width,
                [.. rungs, .. ApartLayout.Of(facts, drafting, frame, facts.Sections.Count)],
                [.. facts.Sections.Select(s => RailLabels.Of(s, facts, frame)), .. ApartLayout.Headings],
                facts.Shown
            );
        }

        /// <summary>Such that no rung folds that need not, and with room for loads in line.</summary>
        private double Best()
        {
            var pieces = Unfolded(new RungDrafting(facts));
            var ends = new Dictionary<Stem, double>();
            var widest = 0.0;
            foreach (var plan in facts.Plans)
            {
                var start = plan.From is { IsDrawn: true } from ? ends.GetValueOrDefault(from) : 0;
                var end = start + pieces[plan.Rung.Index].Width + 6;
                widest = Math.Max(widest, end);
                if (plan.To is { } to)
                    ends[to] = Math.Max(ends.GetValueOrDefault(to), end);
            }
            var frame = LadderFrame.Of(facts.Rungs, 0);
            return Math.Clamp(widest + frame.Left - frame.Right + 10, Narrowest, Widest);
        }

        private List<RungPieces> Unfolded(RungDrafting drafting) =>
            [.. facts.Plans.Select(p => RungPieces.Of(p, drafting, double.PositiveInfinity))];

        /// <summary>From where a rung begins to the right rail, what hangs from its end included.</summary>
        private double[] Needs(List<RungPieces> pieces)
        {
            var needs = new double[pieces.Count];
            var ofStems = new Dictionary<Stem, double>();
            foreach (var plan in facts.Plans.Reverse())
            {
                var below = plan.To is { } to ? ofStems.GetValueOrDefault(to) + 10 : 0;
                var need = Math.Max(pieces[plan.Rung.Index].Width + 8, below);
                needs[plan.Rung.Index] = need;
                if (plan.From is { } from)
                    ofStems[from] = Math.Max(ofStems.GetValueOrDefault(from), need);
            }
            return needs;
        }
    }
}
