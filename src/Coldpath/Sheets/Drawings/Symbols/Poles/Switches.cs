namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>The mark at a fixed contact that says what the switch is made for (IEC 60617, part 7).</summary>
internal enum Function
{
    None,
    Contactor,
    Breaker,
    SwitchDisconnector,
}

/// <summary>Contacts of main poles, 7.5 mm high, fixed contact above and hinge below.</summary>
internal static class Switches
{
    private const double Height = 7.5;
    private const double Top = 1.25;
    private const double Hinge = 6.25;

    /// <summary>IEC: a blade that opens to the left.</summary>
    public static Sign Blade(Function function, bool closed) =>
        new(
            Height,
            (pen, x, y) =>
            {
                pen.Line(x, y, x, y + Top).Line(x, y + Hinge, x, y + Height);
                if (closed)
                    pen.Line(x, y + Hinge, x, y + Top);
                else
                    pen.Blade(x, y + Hinge, 5.774, -30);
                Mark(pen, function, x, y + Top);
            },
            Middle(closed)
        );

    /// <summary>IEEE: two bars across the conductor; a stroke between them when they touch.</summary>
    public static Sign Bars(bool closed) =>
        new(
            Height,
            (pen, x, y) =>
            {
                pen.Line(x, y, x, y + 2.75).Line(x, y + 4.75, x, y + Height);
                pen.Line(x - 2, y + 2.75, x + 2, y + 2.75).Line(x - 2, y + 4.75, x + 2, y + 4.75);
                if (closed)
                    pen.Stroke(Ink.Heavy, x, y + 2.75, x, y + 4.75);
            },
            new At(-2, 3.75)
        );

    /// <summary>IEEE: a knife between two open circles.</summary>
    public static Sign Knife(bool closed) =>
        new(
            Height,
            (pen, x, y) =>
            {
                Circles(pen, x, y);
                if (closed)
                    pen.Line(x, y + Hinge - 0.5, x, y + Top + 0.5);
                else
                    pen.Blade(x, y + Hinge - 0.5, 5.4, -30);
            },
            Middle(closed)
        );

    /// <summary>IEEE: a bow between two open circles, on them when closed and off them when open.</summary>
    public static Sign BreakerArc(bool closed)
    {
        var off = closed ? 0.5 : 1.5;
        return new(
            Height,
            (pen, x, y) =>
            {
                Circles(pen, x, y);
                // A chord of 5 and a rise of 1.25.
                pen.Arc(x - off + 1.875, y + 3.75, 3.125, 126.87, 106.26);
            },
            new At(-off - 1.25, 3.75)
        );
    }

    private static void Circles(Pen pen, double x, double y)
    {
        pen.Line(x, y, x, y + Top - 0.5).Ring(x, y + Top, 0.5);
        pen.Ring(x, y + Hinge, 0.5).Line(x, y + Hinge + 0.5, x, y + Height);
    }

    private static At Middle(bool closed) => closed ? new(0, 3.75) : new(-1.443, 3.75);

    private static void Mark(Pen pen, Function function, double x, double y)
    {
        switch (function)
        {
            case Function.Contactor:
                pen.Arc(x, y - 0.75, 0.75, 90, 180);
                break;
            case Function.Breaker:
                pen.Line(x - 0.9, y - 0.9, x + 0.9, y + 0.9).Line(x - 0.9, y + 0.9, x + 0.9, y - 0.9);
                break;
            case Function.SwitchDisconnector:
                pen.Line(x - 1.25, y - 0.6, x + 1.25, y - 0.6).Ring(x, y, 0.6);
                break;
        }
    }
}
