namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>Contacts that a process, a machine or time moves: a blade between two circles with the mover below it.</summary>
internal static class IeeeSensors
{
    private const double X = Leads.Middle;
    private const double Foot = 4.5;

    public static Symbol Of(ControlPart part)
    {
        var pen = Leads.Draw(part, 4.5, 10.5).Ring(5, 0, 0.5).Ring(10, 0, 0.5);
        var tip = (part.ClosedAtRest, part.ClosedNow) switch
        {
            (true, true) => -0.6,
            (true, false) => -2.6,
            (false, true) => 0.6,
            _ => 2.6,
        };
        pen.Line(5.5, 0, 10.3, tip);
        var grip = tip / 2.4;
        if (part.Device.Blueprint.Kind.Symbol == "limit switch")
            pen.Outline(7, grip - 0.12, 9.4, tip * 0.81, 8.2, Math.Max(tip, 0) + 1.6);
        else
            Mover(pen.Line(X, grip, X, Foot), part.Device.Blueprint.Kind.Symbol);
        return pen.Lying(Leads.Width);
    }

    private static void Mover(Pen pen, string? symbol)
    {
        switch (symbol)
        {
            case "level contact":
                pen.Ring(X, Foot + 1.1, 1.1);
                break;
            case "pressure contact":
                pen.Arc(X, Foot + 1.75, 1.75, 180, 180).Line(X - 1.75, Foot + 1.75, X + 1.75, Foot + 1.75);
                break;
            case "temperature contact":
                pen.Line(
                    X,
                    Foot,
                    X,
                    Foot + 0.8,
                    X + 1.2,
                    Foot + 0.8,
                    X + 1.2,
                    Foot + 1.8,
                    X,
                    Foot + 1.8,
                    X,
                    Foot + 2.6
                );
                break;
            case "flow contact":
                pen.Outline(X, Foot, X + 2, Foot + 0.9, X, Foot + 1.8);
                break;
            case "on-delay timer":
                pen.Line(X - 1, Foot + 1.2, X, Foot, X + 1, Foot + 1.2);
                break;
            case "off-delay timer":
                pen.Line(X - 1, Foot - 1.2, X, Foot, X + 1, Foot - 1.2);
                break;
        }
    }
}
