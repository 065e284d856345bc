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

    public static IEnumerable<Islands> On(PlacedSheet sheet) =>
        Quality
            .Segments(sheet)
            .GroupBy(s => s.Wire.Net ?? "")
            .SelectMany(g => Of(sheet, g.Key, [.. g.Select(s => (s.A, s.B))]));

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

    private static IEnumerable<Islands> Of(PlacedSheet sheet, string net, List<(At A, At B)> segments)
    {
        var lines = segments.Select(s => Around(s.A, s.B)).ToList();
        var groups = Enumerable.Range(0, segments.Count).ToArray();
        for (var i = 0; i < segments.Count; i++)
        for (var j = 0; j < i; j++)
            if (Touch(segments[i], lines[i], segments[j], lines[j]))
                Join(i, j);
        // A terminal that is touched joins the lines on both of its sides.
        foreach (var symbol in sheet.Figures.Where(f => f is { Kind: FigureKind.Symbol, Terminals.Count: 1 }))
        {
            var box = symbol.Bounds.Grown(0.05);
            var met = Enumerable
                .Range(0, segments.Count)
                .Where(i => Holds(box, segments[i].A) || Holds(box, segments[i].B))
                .ToList();
            foreach (var i in met.Skip(1))
                Join(met[0], i);
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

    /// <summary>Lines that only cross are not joined: one must end on the other.</summary>
    private static bool Touch((At A, At B) one, Box first, (At A, At B) other, Box second)
    {
        var (a, b) = (first.Grown(0.02), second.Grown(0.02));
        return Holds(a, other.A) || Holds(a, other.B) || Holds(b, one.A) || Holds(b, one.B);
    }

    private static bool Holds(Box box, At at) =>
        at.X >= box.Left && at.X <= box.Right && at.Y >= box.Top && at.Y <= box.Bottom;
}
