namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>What stands at the end of a line: lamps, horns, and any other load as a box; terminals.</summary>
internal static class Ends
{
    private const double Radius = 2.5;

    public static Symbol Of(ControlPart part) =>
        part.Device.Blueprint.Kind.Symbol switch
        {
            "lamp" => part.Rules == "NEC" ? IeeeLamp(part) : IecLamp(part),
            "horn" => Horn(part),
            "motor" or "dc motor" => Motor(part),
            "heater" => Heater(part),
            "capacitor" => Capacitor(part),
            _ => WordBox.Of(part, part.Part),
        };

    public static Symbol Terminal(ControlPart part)
    {
        const double width = 5;
        return new Pen()
            .Line(0, 0, width / 2 - 0.75, 0)
            .Line(width / 2 + 0.75, 0, width, 0)
            .Ring(width / 2, 0, 0.75)
            .Fit(part.Left, width / 2, -1.2, width - 0.4, Anchor.Middle)
            .Lying(width);
    }

    private static Symbol IecLamp(ControlPart part)
    {
        var x = Leads.Middle;
        const double slant = 1.768;
        return Leads
            .Draw(part, x - Radius, x + Radius)
            .Ring(x, 0, Radius)
            .Line(x - slant, -slant, x + slant, slant)
            .Line(x - slant, slant, x + slant, -slant)
            .Text(IecColour(Colour(part)), x, 4.6, 2)
            .Lying(Leads.Width);
    }

    private static Symbol IeeeLamp(ControlPart part)
    {
        var pen = Leads
            .Draw(part, Leads.Middle - Radius, Leads.Middle + Radius)
            .Ring(Leads.Middle, 0, Radius);
        double[] signs = [-1, 1];
        foreach (var aside in signs)
        foreach (var down in signs)
            pen.Line(Leads.Middle + aside * 1.98, down * 1.98, Leads.Middle + aside * 3.18, down * 3.18);
        var colour = Colour(part);
        return pen.Text(colour.Length == 0 ? "" : colour[..1].ToUpperInvariant(), Leads.Middle, 0.95, 2.6)
            .Lying(Leads.Width);
    }

    private static Symbol Horn(ControlPart part) =>
        Leads
            .Draw(part, 5, 10)
            .Frame(5, -1.25, 7, 1.25)
            .Outline(7, -1.25, 10, -3, 10, 3, 7, 1.25)
            .Lying(Leads.Width);

    private static Symbol Motor(ControlPart part) =>
        Leads
            .Draw(part, 4.5, 10.5)
            .Ring(Leads.Middle, 0, 3)
            .Bold("M", Leads.Middle, 1.2, 3.2)
            .Lying(Leads.Width);

    /// <summary>A resistor divided by strokes.</summary>
    private static Symbol Heater(ControlPart part)
    {
        var pen = Leads.Draw(part, 4.5, 10.5).Frame(4.5, -1.25, 10.5, 1.25);
        for (var x = 6.0; x < 10; x += 1.5)
            pen.Line(x, -1.25, x, 1.25);
        return pen.Lying(Leads.Width);
    }

    private static Symbol Capacitor(ControlPart part) =>
        Leads.Draw(part, 6.9, 8.1).Line(6.9, -2.5, 6.9, 2.5).Line(8.1, -2.5, 8.1, 2.5).Lying(Leads.Width);

    private static string Colour(ControlPart part) =>
        part.Device.Blueprint.Ratings.FirstOrDefault(r => r.Name == "colour")?.Text ?? "";

    /// <summary>IEC 60757; a standard lamp is yellow where it is called amber.</summary>
    private static string IecColour(string colour) =>
        colour switch
        {
            "red" => "RD",
            "yellow" or "amber" => "YE",
            "green" => "GN",
            "blue" => "BU",
            "white" => "WH",
            _ => "",
        };
}
