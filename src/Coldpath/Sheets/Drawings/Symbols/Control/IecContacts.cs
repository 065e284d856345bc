namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>
/// Contacts of IEC 60617 in a level line: the fixed contact on the left, the hinge on the right, moved upwards by what
/// stands below.
/// </summary>
internal static class IecContacts
{
    private const double Fixed = 5;
    private const double Hinge = 10;

    public static Symbol Of(ControlPart part)
    {
        var isFused = Leads.IsFused(part);
        var width = isFused ? 20 : Leads.Width;
        var pen = Leads.Draw(part, Fixed, Hinge, width);
        if (isFused)
            pen.Frame(11, -1, 15.5, 1);
        var isMain = Leads.IsMainPole(part);
        var grip = part.ClosedAtRest && !isMain ? Break(pen, part.ClosedNow) : Make(pen, part.ClosedNow);
        if (isMain)
            Mark(pen, part);
        else
            IecOperators.Draw(pen, part, grip);
        return pen.Lying(width);
    }

    /// <returns>The height of the blade's middle.</returns>
    private static double Make(Pen pen, bool closed)
    {
        // The nib of the fixed contact shows where a closed one is.
        if (closed)
            pen.Line(Fixed, 0, Fixed, 0.7).Line(Hinge, 0, 4.3, 0.8);
        else
            pen.Blade(Hinge, 0, 5.774, -120);
        return closed ? 0.35 : 1.443;
    }

    /// <summary>Its blade presses from above against the fixed contact, and leaves it upwards.</summary>
    private static double Break(Pen pen, bool closed)
    {
        pen.Line(Fixed, 0, Fixed, -2.5);
        if (closed)
            pen.Line(Hinge, 0, 4.4, -2.8);
        else
            pen.Line(Hinge, 0, 5.6, -4.4);
        return closed ? -1.25 : -2.5;
    }

    private static void Mark(Pen pen, ControlPart part)
    {
        switch (part.Device.Blueprint.Kind.Symbol)
        {
            case "breaker":
                pen.Line(Fixed - 0.9, -0.9, Fixed + 0.9, 0.9).Line(Fixed - 0.9, 0.9, Fixed + 0.9, -0.9);
                break;
            case "contactor":
                pen.Arc(Fixed - 0.75, 0, 0.75, 0, 180);
                break;
            default:
                pen.Line(Fixed - 0.6, -1.25, Fixed - 0.6, 1.25).Ring(Fixed, 0, 0.6);
                break;
        }
    }
}
