using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>The letters beside a symbol: tag, ratings as written, and what links it to others.</summary>
/// <param name="Lines">Top to bottom, each with the tag of the device that it speaks of.</param>
internal sealed record UnitLabel(IReadOnlyList<LabelLine> Lines)
{
    private const double TagSize = 3.5;
    private const double TextSize = 2.5;
    private const double Spacing = 1.35;
    private const double Widest = 42;

    public double Width => Lines.Max(l => LetterWidths.Of(l.Text, l.Size, l.Bold));

    public double Height => Lines.Sum(l => l.Size * Spacing);

    /// <param name="links">Interlocks and pairs: their tag, and the words.</param>
    public static UnitLabel Of(PlacedDevice device, IEnumerable<(string Tag, string Words)> links)
    {
        var lines = new List<LabelLine> { new(device.Tag, device.Tag, TagSize, true) };
        lines.AddRange(
            Broken(device.Written, ", ").Select(t => new LabelLine(device.Tag, t, TextSize, false))
        );
        foreach (var (tag, words) in links)
            lines.AddRange(Broken(words.Split(' '), " ").Select(t => new LabelLine(tag, t, TextSize, false)));
        return new(lines);
    }

    /// <summary>One figure for each device that the letters speak of.</summary>
    /// <param name="at">The upper left corner.</param>
    public IEnumerable<Figure> At(At at, PlacedDevice device, Tone tone)
    {
        var y = at.Y;
        var shapes = new List<(string Tag, Shape Shape)>();
        foreach (var line in Lines)
        {
            y += line.Size * Spacing;
            shapes.Add(
                (
                    line.Tag,
                    new Lettering(new(at.X, y - line.Size * 0.3), line.Text, line.Size, Bold: line.Bold)
                )
            );
        }
        return shapes
            .GroupBy(s => s.Tag)
            .Select(g => new Figure
            {
                Kind = FigureKind.Label,
                Title = g.Key,
                Device = g.Key,
                Shapes = [.. g.Select(s => s.Shape)],
                Tone = g.Key == device.Tag ? tone : Tone.Plain,
                Span = g.Key == device.Tag ? device.Span : null,
            });
    }

    /// <summary>Pieces joined into lines that are not too wide; a piece that is too wide alone is one.</summary>
    private static IEnumerable<string> Broken(IReadOnlyList<string> pieces, string between)
    {
        var line = "";
        foreach (var piece in pieces)
            if (line.Length == 0)
                line = piece;
            else if (LetterWidths.Of(line + between + piece, TextSize, false) <= Widest)
                line += between + piece;
            else
            {
                yield return line;
                line = piece;
            }
        if (line.Length > 0)
            yield return line;
    }
}

/// <param name="Tag">The device that it speaks of.</param>
/// <param name="Size">Font size in millimetres.</param>
internal sealed record LabelLine(string Tag, string Text, double Size, bool Bold);
