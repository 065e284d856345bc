using Coldpath.Standards;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>Lines above the title block: what the kinds of line and sign on this sheet mean.</summary>
internal static class Legend
{
    public const double Height = 15;
    private const double Row = 4.5;
    private const double Size = 2.2;
    private const double Sample = 10;
    private const double Between = 6;

    /// <param name="rules">"IEC" or "NEC": whose words.</param>
    public static IEnumerable<Figure> Of(IReadOnlyList<Figure> drawn, Box frame, string rules)
    {
        var y = frame.Bottom - TitleBlock.Height - Height + 4;
        var x = frame.Left + 4;
        foreach (var entry in Entries(drawn, Vocabulary.For(rules)))
        {
            var width = Sample + 1.5 + LetterWidths.Of(entry.Words, Size, false) + Between;
            if (x + width - Between > frame.Right)
                (x, y) = (frame.Left + 4, y + Row);
            yield return new Figure
            {
                Kind = FigureKind.Paper,
                Title = $"legend: {entry.Words}",
                Tone = entry.Tone,
                Shapes =
                [
                    .. entry.Shapes.Select(s => s.Moved(x, y)),
                    new Lettering(new(x + Sample + 1.5, y + Size * 0.35), entry.Words, Size),
                ],
            };
            x += width;
        }
    }

    private static IEnumerable<(string Words, Tone Tone, IReadOnlyList<Shape> Shapes)> Entries(
        IReadOnlyList<Figure> drawn,
        Vocabulary words
    )
    {
        foreach (var (tone, means) in Tones(words))
            if (drawn.Any(f => f.Tone == tone))
                yield return (means, tone, [Line(Ink.Line)]);
        if (drawn.Any(f => f.Kind == FigureKind.Wire && f.Shapes.Any(s => s is Ring)))
            yield return (
                "joined",
                Tone.Plain,
                [Line(Ink.Line), Upright, new Ring(new(Sample / 2, 0), 0.75, Ink.Line, Filled: true)]
            );
        if (Crossings.Any(drawn))
            yield return ("crossing, not joined", Tone.Plain, [Line(Ink.Line), Upright]);
        if (drawn.Any(f => f.Kind == FigureKind.Link && f.Shapes.Any(s => s is Polyline)))
            yield return ("mechanical interlock", Tone.Plain, [Line(Ink.Dashed)]);
        if (drawn.Any(f => f.Kind == FigureKind.Outline))
            yield return ("in one place", Tone.Plain, [Line(Ink.DashDot)]);
        if (drawn.Any(f => f.Kind == FigureKind.Reference && f.Shapes.Any(IsHead)))
            yield return ("goes on where it says", Tone.Plain, [Line(Ink.Line), Head]);
    }

    /// <summary>The head of an arrow: letters, underlines and the sign of the earth also refer to something.</summary>
    private static bool IsHead(Shape shape) =>
        shape is Polyline { Filled: true }
        || shape is Polyline { Points: [var left, _, var right] } && (left.X == right.X || left.Y == right.Y);

    private static (Tone Tone, string Means)[] Tones(Vocabulary words) =>
        [
            (Tone.SolidlyLive, words.Live),
            (Tone.LooselyLive, $"{words.Live} through a load, backfed or not known: take as {words.Live}"),
            (Tone.Dead, $"{words.Dead} by the description: prove it"),
            (Tone.Marked, "of the finding"),
        ];

    private static Polyline Line(Ink ink) => new([new(0, 0), new(Sample, 0)], ink);

    private static readonly Polyline Upright = new([new(Sample / 2, -2.5), new(Sample / 2, 2.5)], Ink.Line);
    private static readonly Polyline Head = new(
        [new(Sample - 2.5, -1), new(Sample, 0), new(Sample - 2.5, 1)],
        Ink.Line
    );
}
