using System.Globalization;
using Coldpath.Sheets.Drawings;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>What must hold of every placed sheet, as sentences about what does not.</summary>
public static class Quality
{
    private static readonly FigureKind[] Solid =
    [
        FigureKind.Symbol,
        FigureKind.Label,
        FigureKind.Reference,
        FigureKind.Link,
    ];

    /// <summary>All that a sheet can have wrong with it, whatever it shows.</summary>
    public static IEnumerable<string> Faults(PlacedSheet sheet) =>
        Overlaps(sheet).Concat(WiresThrough(sheet)).Concat(Slanting(sheet)).Concat(Outside(sheet));

    /// <summary>Symbols, labels and references that share more than a touch. Dashed links are lines, not boxes.</summary>
    public static IEnumerable<string> Overlaps(PlacedSheet sheet)
    {
        var boxes = Boxes(sheet).OrderBy(b => b.Box.Left).ToList();
        var active = new List<(Figure Figure, Box Box)>();
        foreach (var next in boxes)
        {
            active.RemoveAll(a => a.Box.Right <= next.Box.Left);
            foreach (var (figure, box) in active)
                if (box.Overlaps(next.Box))
                    yield return $"sheet {sheet.Number}: {Told(figure, box)} overlaps {Told(next.Figure, next.Box)}";
            active.Add(next);
        }
    }

    /// <summary>Wires that run through the inside of a symbol, a label or a reference.</summary>
    public static IEnumerable<string> WiresThrough(PlacedSheet sheet)
    {
        var boxes = Boxes(sheet).OrderBy(b => b.Box.Left).ToList();
        var widest = boxes.Select(b => b.Box.Width).Append(0).Max();
        var lefts = boxes.Select(b => b.Box.Left).ToArray();
        foreach (var (wire, a, b) in Segments(sheet))
        {
            var line = new Box(
                Math.Min(a.X, b.X),
                Math.Min(a.Y, b.Y),
                Math.Max(a.X, b.X),
                Math.Max(a.Y, b.Y)
            );
            var first = Array.BinarySearch(lefts, line.Left - widest - 1);
            for (var i = first < 0 ? ~first : first; i < boxes.Count && lefts[i] < line.Right; i++)
                if (Crosses(line, boxes[i].Box))
                    yield return $"sheet {sheet.Number}: wire {wire.Net} {Told(line)} runs through {Told(boxes[i].Figure, boxes[i].Box)}";
        }
    }

    /// <summary>Lines of wires that are neither upright nor level.</summary>
    public static IEnumerable<string> Slanting(PlacedSheet sheet) =>
        from s in Segments(sheet)
        where Math.Abs(s.A.X - s.B.X) > 0.001 && Math.Abs(s.A.Y - s.B.Y) > 0.001
        select $"sheet {sheet.Number}: wire {s.Wire.Net} slants from {s.A} to {s.B}";

    /// <summary>Figures that reach over the sheet's edge.</summary>
    public static IEnumerable<string> Outside(PlacedSheet sheet) =>
        from f in sheet.Figures
        where f.Shapes.Count > 0
        let b = f.Bounds
        where
            b.Left < -0.01 || b.Top < -0.01 || b.Right > sheet.Width + 0.01 || b.Bottom > sheet.Height + 0.01
        select $"sheet {sheet.Number}: {Told(f, b)} is not on a sheet of {sheet.Width} x {sheet.Height}";

    /// <summary>
    /// Terminals of one net that neither lines nor references join: every terminal in a symbol must be met by a line of
    /// its net, and every piece of a net that is in pieces must bear a reference with that net.
    /// </summary>
    /// <param name="sheets">All that show the nets.</param>
    /// <param name="netOf">The net of a terminal "K1:A1"; null for one that is alone on its net.</param>
    /// <param name="isBar">Whether a device's terminals each go right through it, from above to below.</param>
    public static IEnumerable<string> Parted(
        IReadOnlyList<PlacedSheet> sheets,
        Func<string, string?> netOf,
        Func<string, bool>? isBar = null
    )
    {
        var islands = sheets.SelectMany(s => Islands.On(s, isBar ?? (_ => false))).ToList();
        foreach (var sheet in sheets)
        foreach (var symbol in sheet.Figures.Where(f => f.Kind == FigureKind.Symbol))
        foreach (var terminal in symbol.Terminals)
            if (
                netOf($"{symbol.Device}:{terminal}") is { } net
                && !islands.Any(i => i.Sheet == sheet && i.Net == net && i.Meets(symbol.Bounds))
            )
                yield return $"sheet {sheet.Number}: no wire meets {symbol.Device}:{terminal} of net {net}";
        foreach (var pieces in islands.GroupBy(i => i.Net).Where(g => g.Count() > 1))
        foreach (var piece in pieces)
            if (!piece.BearsReference())
                yield return $"sheet {piece.Sheet.Number}: a piece of net {piece.Net} at {piece.Points[0]} leads nowhere";
    }

    /// <summary>Terminals in symbols that no wire of their net on the same sheet lists.</summary>
    public static IEnumerable<string> Unlisted(
        IReadOnlyList<PlacedSheet> sheets,
        Func<string, string?> netOf
    ) =>
        from sheet in sheets
        let listed = sheet
            .Figures.Where(f => f.Kind == FigureKind.Wire)
            .SelectMany(f => f.Terminals.Select(t => (t, f.Net)))
            .ToHashSet()
        from symbol in sheet.Figures
        where symbol.Kind == FigureKind.Symbol
        from terminal in symbol.Terminals.Select(t => $"{symbol.Device}:{t}")
        where netOf(terminal) is { } net && !listed.Contains((terminal, net))
        select $"sheet {sheet.Number}: no wire lists {terminal}";

    /// <summary>Terminals in symbols, with how often each is drawn.</summary>
    public static IReadOnlyDictionary<string, int> Terminals(IEnumerable<PlacedSheet> sheets) =>
        sheets
            .SelectMany(s => s.Figures)
            .Where(f => f.Kind == FigureKind.Symbol)
            .SelectMany(f => f.Terminals.Select(t => $"{f.Device}:{t}"))
            .GroupBy(t => t)
            .ToDictionary(g => g.Key, g => g.Count());

    internal static IEnumerable<(Figure Wire, At A, At B)> Segments(PlacedSheet sheet) =>
        from wire in sheet.Figures
        where wire.Kind == FigureKind.Wire
        from line in wire.Shapes.OfType<Polyline>()
        from pair in line.Points.Zip(line.Points.Skip(1))
        select (wire, pair.First, pair.Second);

    /// <summary>A label's lines apart from each other; a link's lettering without its line.</summary>
    private static IEnumerable<(Figure Figure, Box Box)> Boxes(PlacedSheet sheet) =>
        sheet
            .Figures.Where(f => Solid.Contains(f.Kind) && f.Shapes.Count > 0)
            .Select(f =>
                (
                    f,
                    f.Kind == FigureKind.Link
                        ? Box.Around(f.Shapes.OfType<Lettering>().Select(l => l.Bounds))
                        : f.Bounds
                )
            )
            .Where(f => f.Item2 is not null)
            .Select(f => (f.f, f.Item2!.Value));

    private static bool Crosses(Box line, Box box) =>
        line.Left < box.Right - Hair
        && line.Right > box.Left + Hair
        && line.Top < box.Bottom - Hair
        && line.Bottom > box.Top + Hair;

    private static string Told(Figure figure, Box box) => $"{figure.Kind} '{figure.Title}' {Told(box)}";

    private static string Told(Box box) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"[{box.Left:0.#} {box.Top:0.#} {box.Right:0.#} {box.Bottom:0.#}]"
        );

    private const double Hair = 0.05;
}
