namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>Terminal names beside the leads. In one-line form a lead stands for several, which are not named.</summary>
internal static class Markings
{
    public static void Beside(Pen pen, PowerPart part, double height)
    {
        foreach (var port in part.Ports.Where(p => p.Conductors == 1))
            pen.Fit(port.Name, port.X + 0.6, port.Above ? 1.9 : height - 0.6, Room(part, port), Anchor.Start);
    }

    /// <summary>To the next lead on the same side.</summary>
    public static double Room(PowerPart part, PowerPort port) =>
        part
            .Ports.Where(p => p.Above == port.Above && p.X > port.X)
            .Select(p => p.X - port.X - 1.2)
            .Append(10)
            .Min();
}
