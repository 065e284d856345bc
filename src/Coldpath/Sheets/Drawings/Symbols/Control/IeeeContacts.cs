namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>Contacts of IEEE 315 in a level line: bars for what a coil moves, circles for what a hand or a process moves.</summary>
internal static class IeeeContacts
{
    private const double X = Leads.Middle;

    public static Symbol Of(ControlPart part)
    {
        var symbol = part.Device.Blueprint.Kind.Symbol;
        if (Leads.IsMainPole(part) && symbol != "contactor")
            return Knife(part, symbol == "breaker");
        return symbol switch
        {
            "push button" or "emergency stop" => IeeeButtons.Button(part, symbol == "emergency stop"),
            "selector" or "key selector" => IeeeButtons.Selector(part, symbol == "key selector"),
            "level contact"
            or "pressure contact"
            or "temperature contact"
            or "flow contact"
            or "limit switch" => IeeeSensors.Of(part),
            "on-delay timer"
            or "off-delay timer" when !part.Part.Contains("instant", StringComparison.Ordinal) =>
                IeeeSensors.Of(part),
            _ => Bars(part, symbol),
        };
    }

    private static Symbol Bars(ControlPart part, string? symbol)
    {
        var pen = Leads.Draw(part, X - 1.25, X + 1.25);
        pen.Line(X - 1.25, -2.5, X - 1.25, 2.5).Line(X + 1.25, -2.5, X + 1.25, 2.5);
        if (part.ClosedAtRest && part.ClosedNow)
            pen.Line(X - 2.25, 2.75, X + 2.25, -2.75);
        else if (part.ClosedAtRest)
            pen.Line(X - 2.25, 2.75, X - 0.9, 1.1).Line(X + 0.9, -1.1, X + 2.25, -2.75);
        else if (part.ClosedNow)
            pen.Stroke(Ink.Heavy, X - 1.25, 0, X + 1.25, 0);
        var word = symbol switch
        {
            "overload relay" => "OL",
            "soft starter" or "drive" => Leads.Word(part),
            _ => "",
        };
        return pen.Fit(word, X, 4.6, 13, Anchor.Middle).Lying(Leads.Width);
    }

    /// <summary>A pole of a disconnect or breaker in a rung.</summary>
    private static Symbol Knife(ControlPart part, bool isBreaker)
    {
        var isFused = Leads.IsFused(part);
        var width = isFused ? 20 : Leads.Width;
        var pen = Leads.Draw(part, 4.5, 10.5, width).Ring(5, 0, 0.5).Ring(10, 0, 0.5);
        if (isFused)
            pen.Frame(11, -1, 15.5, 1).Line(12, -1, 12, 1).Line(14.5, -1, 14.5, 1);
        if (isBreaker)
            // A chord of 5 and a rise of 1.25.
            pen.Arc(X, 1.875 - (part.ClosedNow ? 0.5 : 1.5), 3.125, 216.87, 106.26);
        else if (part.ClosedNow)
            pen.Line(5.5, 0, 9.5, 0);
        else
            pen.Line(9.5, 0, 5.2, -2.5);
        return pen.Lying(width);
    }
}
