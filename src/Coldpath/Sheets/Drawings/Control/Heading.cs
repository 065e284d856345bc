namespace Coldpath.Sheets.Drawings.Control;

/// <summary>A rail of a section, with what stands at its top.</summary>
/// <param name="Lines">Its name, voltage and where it comes from.</param>
internal sealed record Rail(string Net, double X, bool IsEarthed, TextStack Lines);

/// <summary>What stands above the blocks of a section on each sheet.</summary>
/// <param name="Title">Null for rungs.</param>
internal sealed record Heading(string? Title, Rail? Left, Rail? Right)
{
    private const double Below = 5;
    private const double TitleSize = 3;

    public double Height =>
        Title is not null ? TitleSize + 3
        : Left is null && Right is null ? 0
        : TopOfRails + Below;

    private double TopOfRails =>
        new[] { Left, Right }.OfType<Rail>().Select(r => r.Lines.Height).Append(0).Max() + 0.8;

    /// <summary>Labels, rails and signs of the earth.</summary>
    /// <param name="y">Where the heading stands.</param>
    /// <param name="leftTaps">Heights on the sheet at which rungs meet the left rail.</param>
    /// <param name="joined">Terminals that the rungs join to a rail, by net.</param>
    public IEnumerable<Noted> Drawn(
        double y,
        IReadOnlyList<double> leftTaps,
        IReadOnlyList<double> rightTaps,
        Func<string, IEnumerable<string>> joined,
        Shown shown
    )
    {
        if (Title is not null)
            yield return new(
                new()
                {
                    Kind = FigureKind.Label,
                    Title = Title,
                    Shapes = [new Lettering(new(0, y + TitleSize), Title, TitleSize, Bold: true)],
                },
                []
            );
        foreach (var (rail, taps, side) in new[] { (Left, leftTaps, -1), (Right, rightTaps, 1) })
            if (rail is not null && taps.Count > 0)
                foreach (var figure in Drawn(rail, y, taps, side, joined(rail.Net), shown))
                    yield return figure;
    }

    private IEnumerable<Noted> Drawn(
        Rail rail,
        double y,
        IReadOnlyList<double> taps,
        int side,
        IEnumerable<string> joined,
        Shown shown
    )
    {
        var top = y + TopOfRails;
        var label = new Figure
        {
            Kind = FigureKind.Reference,
            Title = $"rail {string.Join(", ", rail.Lines.Lines.Select(l => l.Text))}",
            Net = rail.Net,
            Shapes = [],
        };
        yield return rail.Lines.At(
            label,
            rail.X,
            top - 0.8 - rail.Lines.Height,
            side < 0 ? Anchor.Start : Anchor.End
        );
        var ink = new WireInk(rail.Net);
        var last = taps.Max();
        foreach (var (from, to) in taps.Append(top).Order().Distinct().Zip(taps.Order().Distinct()))
            ink.Line(new(rail.X, from), new(rail.X, to));
        foreach (var tap in taps.Where(t => t < last).Distinct())
            ink.Dot(new(rail.X, tap));
        foreach (var terminal in joined)
            ink.Join(terminal);
        yield return new(ink.ToFigure(shown), []);
        if (rail.IsEarthed)
            yield return new(
                label with
                {
                    Title = $"rail {rail.Lines.Lines[0].Text} is earthed",
                    Shapes = Flags.EarthShapes(new(rail.X, top), side),
                },
                []
            );
    }
}
