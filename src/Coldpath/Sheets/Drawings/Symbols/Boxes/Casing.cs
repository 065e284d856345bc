using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A box from lead to lead with the terminals' names inside it.</summary>
internal sealed class Casing
{
    private readonly PowerPart part;

    /// <param name="inside">Height between the rows of names.</param>
    /// <param name="least">Width that what is drawn inside needs.</param>
    public Casing(PowerPart part, double inside, double least = 10)
    {
        this.part = part;
        Upper = Pen.M + Strokes.Room(part);
        Height = Upper + inside + 2 * Row + Pen.M;
        var (first, last) = (part.Ports.Min(p => p.X), part.Ports.Max(p => p.X));
        var spare = Math.Max(0, least - (last - first) - 10);
        Left = first - 5 - spare / 2;
        Right = last + 5 + spare / 2;
    }

    /// <summary>For a row of names.</summary>
    public const double Row = 2.5;
    public double Left { get; }
    public double Right { get; }
    public double Upper { get; }
    public double Height { get; }
    public double Lower => Height - Pen.M;
    public double Middle => (Left + Right) / 2;

    /// <summary>Where signs inside begin and end.</summary>
    public double Top => Upper + Row;
    public double Bottom => Lower - Row;

    public Casing Draw(Pen pen)
    {
        pen.Frame(Left, Upper, Right, Lower);
        foreach (var port in part.Ports)
        {
            var (end, edge) = port.Above ? (0, Upper) : (Height, Lower);
            pen.Line(port.X, end, port.X, edge);
            if (port.Conductors == 1)
                Name(pen, port);
        }
        Strokes.Across(pen, part);
        return this;
    }

    private void Name(Pen pen, PowerPort port)
    {
        var room = Math.Min(Markings.Room(part, port), Right - port.X - 0.8);
        pen.Fit(port.Name, port.X + 0.5, port.Above ? Upper + 2 : Lower - 0.8, room, Anchor.Start);
    }
}
