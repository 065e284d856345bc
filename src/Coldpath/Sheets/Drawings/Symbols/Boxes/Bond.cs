using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>The earthed conductor of a source, drawn to an earth sign right of all its conductors.</summary>
/// <param name="Terminal">The conductor's name.</param>
/// <param name="Port">That has it.</param>
/// <param name="Right">Place of the earth sign.</param>
/// <param name="Resistance">A resistor is built in.</param>
/// <param name="Ieee">Drawn as IEEE 315 does.</param>
internal sealed record Bond(string Terminal, PowerPort Port, double Right, bool Resistance, bool Ieee)
{
    public double X => Port.X;

    public static Bond? Of(PowerPart part)
    {
        foreach (var (terminal, resistance) in Earths.Bonds(part))
        foreach (var port in part.Ports)
            if (port.Name.Split(' ').Contains(terminal))
                return new(terminal, port, part.Ports.Max(p => p.X) + 7.5, resistance, part.Rules == "NEC");
        return null;
    }

    /// <summary>From the conductor at a height; the sign ends 4.5 mm below it, 10 mm with a resistor.</summary>
    public void Draw(Pen pen, double y)
    {
        pen.Line(X, y, Right, y, Right, y + 1);
        var foot = y + (Resistance ? 8.2 : 2.5);
        if (Resistance)
            (Ieee ? Links.Zigzag : Links.Resistor).Draw(pen, Right, y + 0.7);
        else
            pen.Line(Right, y + 1, Right, foot);
        Earths.Sign(pen, Right, foot);
        if (Port.Conductors > 1)
            pen.Fit(Terminal, (X + Right) / 2, y - 0.6, Right - X, Anchor.Middle);
    }
}
