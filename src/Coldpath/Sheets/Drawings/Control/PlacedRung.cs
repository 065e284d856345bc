namespace Coldpath.Sheets.Drawings.Control;

/// <summary>A rung with its place in a block.</summary>
/// <param name="Rows">Millimetres from the left of the sheet.</param>
/// <param name="Flag">Stands before the node that this rung and those below begin at; null when there is none.</param>
/// <param name="Y">Its baseline, from the top of the block.</param>
internal sealed record PlacedRung(RungPlan Plan, LaidRows Rows, Laid? Flag, double Y)
{
    public At? In => Rows.In?.Plus(0, Y);

    public At? Out => Rows.Out?.Plus(0, Y);

    public double Bottom => Y + new[] { Rows.Down, Flag?.Down ?? 0, LeastHalf }.Max();

    /// <summary>Room for its number, above and below the baseline.</summary>
    public const double LeastHalf = LadderFrame.NumberSize * 0.6;

    public void Draw(Pen pen, LadderFrame frame)
    {
        Rows.Draw(pen, new(0, Y));
        pen.Add(Number(frame));
        if (Plan.FromRail && In is { } into)
            pen.Wire(Plan.Rung.Start!.Out, into with { X = frame.Left }, into);
        if (Plan.ToRail && Out is { } outOf)
            pen.Wire(Plan.Rung.End!.In, outOf, outOf with { X = frame.Right });
    }

    private Noted Number(LadderFrame frame)
    {
        const double size = LadderFrame.NumberSize;
        var figure = new Figure
        {
            Kind = FigureKind.Label,
            Title = Plan.Rung.Words,
            Span = Plan.Rung.Span,
            Shapes =
            [
                new Lettering(
                    new(frame.Left - 2, Y + (size * 0.36)),
                    Plan.Rung.Number,
                    size,
                    Anchor.End,
                    Bold: true
                ),
            ],
        };
        return new(figure, []);
    }
}
