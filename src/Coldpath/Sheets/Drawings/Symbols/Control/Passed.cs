using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>Fuse links, heaters, breaker poles and what else a rung passes.</summary>
internal static class Passed
{
    public static Symbol Of(ControlPart part)
    {
        var ieee = part.Rules == "NEC";
        return part.Device.Blueprint.Kind.Symbol switch
        {
            "fuse" => Fuse(part, ieee),
            "overload relay" => Heater(part, ieee),
            "breaker" or "disconnector" or "fused disconnector" or "contactor" or "transfer switch" => ieee
                ? IeeeContacts.Of(part)
                : IecContacts.Of(part),
            "resistor" => Resistor(part, ieee),
            "reactor" => Reactor(part),
            "diode" => Diode(part),
            "terminal strip" or "distribution block" => Ends.Terminal(part),
            "current transformer" => Leads.Draw(part, 5, 5).Ring(7.5, 0, 2).Lying(Leads.Width),
            "lamp" or "horn" or "motor" => Ends.Of(part),
            _ => IsConductor(part) ? Leads.Draw(part, 5, 5).Lying(Leads.Width) : WordBox.Of(part, part.Part),
        };
    }

    private static bool IsConductor(ControlPart part) =>
        part.Left.Length > 0
        && part.Device.Blueprint.Network.Elements.Any(e =>
            e.Type == ElementType.Conductor && (e.A, e.B) == (part.Left, part.Right)
        );

    private static Symbol Fuse(ControlPart part, bool ieee)
    {
        var pen = Leads.Draw(part, 4.5, 10.5).Frame(4.5, -1.25, 10.5, 1.25);
        if (ieee)
            pen.Line(5.75, -1.25, 5.75, 1.25).Line(9.25, -1.25, 9.25, 1.25);
        if (part.ClosedNow)
            pen.Line(4.5, 0, 10.5, 0);
        else
            pen.Line(4.5, 0, 6.6, 0).Line(8.4, 0, 10.5, 0);
        return pen.Lying(Leads.Width);
    }

    private static Symbol Resistor(ControlPart part, bool ieee) =>
        ieee
            ? Leads
                .Draw(part, 4.5, 10.5)
                .Line(4.5, 0, 5, -1.25, 6, 1.25, 7, -1.25, 8, 1.25, 9, -1.25, 10, 1.25, 10.5, 0)
                .Lying(Leads.Width)
            : Leads.Draw(part, 4.5, 10.5).Frame(4.5, -1.25, 10.5, 1.25).Lying(Leads.Width);

    private static Symbol Reactor(ControlPart part)
    {
        var pen = Leads.Draw(part, 4.5, 10.5);
        for (var i = 0; i < 3; i++)
            pen.Arc(5.5 + 2 * i, 0, 1, 180, 180);
        return pen.Lying(Leads.Width);
    }

    /// <summary>A triangle that points from anode to cathode, and a bar; turned where the rung passes it against that.</summary>
    private static Symbol Diode(ControlPart part)
    {
        var (from, to) = part.Left == "K" ? (9.0, 6.0) : (6.0, 9.0);
        return Leads
            .Draw(part, 6, 9)
            .Line(6, 0, 9, 0)
            .Outline(from, -1.5, from, 1.5, to, 0)
            .Line(to, -1.5, to, 1.5)
            .Lying(Leads.Width);
    }

    private static Symbol Heater(ControlPart part, bool ieee) =>
        ieee
            ? Leads.Draw(part, 5, 10).Arc(6.5, 0, 1.5, 180, 180).Arc(8.5, 0, 1.5, 0, 180).Lying(Leads.Width)
            : Leads
                .Draw(part, 6, 9)
                .Line(6, 0, 6, -1.75, 9, -1.75, 9, 0)
                .Frame(4.5, -2.5, 10.5, 2.5)
                .Lying(Leads.Width);
}
