namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>What moves a contact, below it on a dashed link (IEC 60617, parts 2 and 7).</summary>
internal static class IecOperators
{
    private const double X = Leads.Middle;
    private const double Y = 5;

    /// <param name="grip">Height of the blade's middle.</param>
    public static void Draw(Pen pen, ControlPart part, double grip)
    {
        var symbol = part.Device.Blueprint.Kind.Symbol;
        if (symbol is "on-delay timer" or "off-delay timer")
        {
            if (!part.Part.Contains("instant", StringComparison.Ordinal))
                Parachute(pen, grip, symbol == "on-delay timer");
            return;
        }
        if (Shape(pen, symbol))
            pen.Stroke(Ink.Dashed, X, grip, X, Y);
        Words(pen, part, symbol);
    }

    /// <returns>False when the contact is moved by its device's own coil.</returns>
    private static bool Shape(Pen pen, string? symbol)
    {
        switch (symbol)
        {
            case "push button":
                pen.Line(X - 1.75, Y - 1, X - 1.75, Y, X + 1.75, Y, X + 1.75, Y - 1);
                return true;
            case "emergency stop":
                pen.Line(X - 2, Y, X + 2, Y).Arc(X, Y, 2, 0, 180);
                return true;
            case "selector":
                pen.Line(X - 1.75, Y - 1, X - 1.75, Y, X + 1.75, Y, X + 1.75, Y + 1);
                return true;
            case "key selector":
                pen.Ring(X, Y + 0.9, 0.9).Line(X, Y + 1.8, X, Y + 3.4).Line(X, Y + 3.4, X + 0.9, Y + 3.4);
                return true;
            case "level contact":
                pen.Ring(X, Y + 1.1, 1.1)
                    .Line(X - 2.6, Y + 1.1, X - 1.1, Y + 1.1)
                    .Line(X + 1.1, Y + 1.1, X + 2.6, Y + 1.1);
                return true;
            case "pressure contact":
                Boxed(pen).Text("p", X, Y + 2.1, 2.6);
                return true;
            case "temperature contact":
                Boxed(pen).Text("θ", X, Y + 2.4, 2.4);
                return true;
            case "flow contact":
                Boxed(pen)
                    .Line(X - 1.1, Y + 1.5, X + 1.1, Y + 1.5)
                    .Line(X + 0.4, Y + 0.9, X + 1.1, Y + 1.5, X + 0.4, Y + 2.1);
                return true;
            case "limit switch":
                pen.Ring(X, Y + 0.8, 0.8).Line(X - 2.2, Y + 2.2, X - 0.6, Y + 1.6, X + 1.6, Y + 1.6);
                return true;
            case "overload relay":
                Boxed(pen)
                    .Line(
                        X - 1.5,
                        Y + 2.1,
                        X - 0.7,
                        Y + 2.1,
                        X - 0.7,
                        Y + 0.9,
                        X + 0.7,
                        Y + 0.9,
                        X + 0.7,
                        Y + 2.1,
                        X + 1.5,
                        Y + 2.1
                    );
                return true;
            default:
                return false;
        }
    }

    private static Pen Boxed(Pen pen) => pen.Frame(X - 1.5, Y, X + 1.5, Y + 3);

    /// <summary>Positions of a selector; the words of a starter's own contact.</summary>
    private static void Words(Pen pen, ControlPart part, string? symbol)
    {
        if (part.Positions.Count > 0)
            pen.Whole(Leads.Positions(part), X, Y + (symbol == "key selector" ? 5.2 : 2.9), 14.5);
        else if (symbol is "soft starter" or "drive")
            pen.Fit(Leads.Word(part), X, Y, 12, Anchor.Middle);
    }

    /// <summary>It holds back what moves from the bow towards its centre.</summary>
    private static void Parachute(Pen pen, double grip, bool upwards)
    {
        var foot = upwards ? 5.4 : 4.9;
        pen.Line(X - 0.35, grip, X - 0.35, foot).Line(X + 0.35, grip, X + 0.35, foot);
        if (upwards)
            pen.Arc(X, 3.75, 1.7, 20, 140);
        else
            pen.Arc(X, 6.55, 1.7, 200, 140);
    }
}
