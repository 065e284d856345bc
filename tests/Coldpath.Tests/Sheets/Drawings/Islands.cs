using Coldpath.Sheets.Drawings;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>Lines of one net on one sheet that hang together.</summary>
/// <param name="Points">Their ends.</param>
internal sealed record Islands(
    PlacedSheet Sheet,
    string Net,
    IReadOnlyList<At> Points,
    IReadOnlyList<Box> Lines
)
{
    private const double Near = 2.5;

    /// <param name="isBar">Whether a device's terminals each go right through it.</param>
    public static IEnumerable<Islands> On(PlacedSheet sheet, Func<string, bool> isBar) =>
        Quality
            .Segments(sheet)
            .GroupBy(s => s.Wire.Net ?? "")
            .SelectMany(g => Of(sheet, g.Key, [.. g.Select(s => (s.A, s.B))], isBar));

    /// <summary>Ends at a symbol's edge or inside it.</summary>
    public bool Meets(Box symbol)
    {
        var grown = symbol.Grown(0.05);
        return Points.Any(p =>
            p.X >= grown.Left && p.X <= grown.Right && p.Y >= grown.Top && p.Y <= grown.Bottom
        );
    }

    public bool BearsReference() =>
        Sheet.Figures.Any(f =>
            f.Kind == FigureKind.Reference
            && f.Net == Net
            && f.Shapes.Count > 0
            && f.Bounds.Grown(Near) is var box
            && Lines.Any(l => l.Grown(0.1).Overlaps(box))
        );

    private static IEnumerable<Islands> Of(
        PlacedSheet sheet,
        string net,
        List<(At A, At B)> segments,
        Func<string, bool> isBar
    )
    {
        var lines = segments.Select(s => Around(s.A, s.B)).ToList();
        var dots = sheet
            .Figures.Where(f => f.Kind == FigureKind.Wire && f.Net == net)
            .SelectMany(f => f.Shapes.OfType<Ring>())
            .Where(r => r.Filled)
            .Select(r => r.Centre)
            .ToList();
        var groups = Enumerable.Range(0, segments.Count).ToArray();
        for (var i = 0; i < segments.Count; i++)
        for (var j = 0; j < i; j++)
            if (
                Touch(segments[i], lines[i], segments[j], lines[j])
                || dots.Any(d => Holds(lines[i].Grown(0.02), d) && Holds(lines[j].Grown(0.02), d))
            )
                Join(i, j);
        foreach (var symbol in sheet.Figures.Where(f => f.Kind == FigureKind.Symbol))
        {
            var box = symbol.Bounds.Grown(0.05);
            var met = (
                from i in Enumerable.Range(0, segments.Count)
                from end in new[] { segments[i].A, segments[i].B }
                where Holds(box, end)
                select (Segment: i, end.X)
            ).ToList();
            // A terminal that is touched joins the lines on both of its sides, a bar those above and below each other.
            var sides =
                symbol.Terminals.Count == 1 ? met.GroupBy(_ => 0.0)
                : isBar(symbol.Device!) ? met.GroupBy(m => Math.Round(m.X, 2))
                : [];
            foreach (var side in sides)
            foreach (var (segment, _) in side.Skip(1))
                Join(side.First().Segment, segment);
        }
        return Enumerable
            .Range(0, segments.Count)
            .GroupBy(Root)
            .Select(g => new Islands(
                sheet,
                net,
                [.. g.SelectMany(i => new[] { segments[i].A, segments[i].B })],
                [.. g.Select(i => lines[i])]
            ));

        int Root(int i)
        {
            while (groups[i] != i)
                i = groups[i];
            return i;
        }

        void Join(int a, int b) => groups[Root(a)] = Root(b);
    }

    private static Box Around(At a, At b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    /// <summary>Lines that only cross are not joined: one must end on the other, or a dot lie on both.</summary>
    private static bool Touch((At A, At B) one, Box first, (At A, At B) other, Box second)
    {
        var (a, b) = (first.Grown(0.02), second.Grown(0.02));
        return Holds(a, other.A) || Holds(a, other.B) || Holds(b, one.A) || Holds(b, one.B);
    }

    private static bool Holds(Box box, At at) =>
        at.X >= box.Left && at.X <= box.Right && at.Y >= box.Top && at.Y <= box.Bottom;
}
