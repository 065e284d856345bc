namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>Coils of contactors, relays and timers; an input or supply of a starter is a box with its words.</summary>
internal static class Coils
{
    public static Symbol Of(ControlPart part)
    {
        if (part.Part is not ("coil" or ""))
            return WordBox.Of(part, part.Part);
        return part.Rules == "NEC" ? Ieee(part) : Iec(part);
    }

    private static Symbol Iec(ControlPart part)
    {
        var pen = Leads.Draw(part, 5, 10).Frame(5, -3.75, 10, 3.75);
        switch (part.Device.Blueprint.Kind.Symbol)
        {
            // Slow to operate: a cross in a field of its own; slow to release: that field is full.
            case "on-delay timer":
                pen.Frame(5, 3.75, 10, 6.25).Line(5, 3.75, 10, 6.25).Line(5, 6.25, 10, 3.75);
                break;
            case "off-delay timer":
                pen.Solid(5, 3.75, 10, 3.75, 10, 6.25, 5, 6.25);
                break;
        }
        return pen.Lying(Leads.Width);
    }

    private static Symbol Ieee(ControlPart part)
    {
        var pen = Leads.Draw(part, 3.75, 11.25).Ring(Leads.Middle, 0, 3.75);
        var letters = part.Device.Blueprint.Kind.Symbol switch
        {
            "on-delay timer" or "off-delay timer" => "TR",
            "relay" => "CR",
            _ => "",
        };
        return pen.Text(letters, Leads.Middle, 1, 2.8).Lying(Leads.Width);
    }
}
