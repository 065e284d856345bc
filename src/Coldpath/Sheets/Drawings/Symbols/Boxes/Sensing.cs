namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A relay that watches the voltages of its terminals.</summary>
internal static class Sensing
{
    public static Symbol Of(PowerPart part)
    {
        var casing = new Casing(part, 2.5, 12.5);
        var pen = new Pen();
        casing.Draw(pen);
        var volts = part.Rules == "NEC" ? "V<" : "U<";
        pen.Text(
            part.Ports.Sum(p => p.Conductors) > 2 ? "3" + volts : volts,
            casing.Middle,
            casing.Bottom + 0.6,
            2.5
        );
        return pen.Hanging(casing.Height);
    }
}
