namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>Controls moved by a hand: a bar over or under two circles, on a stem.</summary>
internal static class IeeeButtons
{
    private const double X = Leads.Middle;

    public static Symbol Button(ControlPart part, bool mushroom)
    {
        var pen = Circles(part);
        var bar = (part.ClosedAtRest, part.ClosedNow) switch
        {
            (true, true) => 0.5,
            (true, false) => 1.5,
            (false, true) => -0.5,
            _ => -1.5,
        };
        const double top = -4;
        pen.Line(X - 3, bar, X + 3, bar).Line(X, bar, X, top);
        if (mushroom)
            pen.Arc(X, top + 1.5, 2.5, 216.87, 106.26).Line(X - 2, top, X + 2, top);
        else
            pen.Line(X - 1, top, X + 1, top);
        return pen.Lying(Leads.Width);
    }

    /// <summary>Its bar lies on the circles in the positions that are lettered below.</summary>
    public static Symbol Selector(ControlPart part, bool key)
    {
        var pen = Circles(part);
        var bar = part.ClosedNow ? -0.5 : -1.5;
        pen.Line(X - 3, bar, X + 3, bar).Line(X, bar, X, -3);
        if (key)
            pen.Ring(X, -3.9, 0.9);
        else
            pen.Line(X - 1, -4, X, -3, X + 1, -4);
        return pen.Whole(Leads.Positions(part), X, 2.6, 14.5).Lying(Leads.Width);
    }

    private static Pen Circles(ControlPart part) =>
        Leads.Draw(part, 4.5, 10.5).Ring(5, 0, 0.5).Ring(10, 0, 0.5);
}
