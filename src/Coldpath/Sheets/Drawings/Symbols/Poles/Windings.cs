namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>Windings in or around a pole.</summary>
internal static class Windings
{
    /// <summary>Four half circles.</summary>
    public static Sign Bumps { get; } =
        new(
            10,
            (pen, x, y) =>
            {
                pen.Line(x, y, x, y + 1);
                for (var i = 0; i < 4; i++)
                    pen.Arc(x, y + 2 + 2 * i, 1, 270, 180);
                pen.Line(x, y + 9, x, y + 10);
            }
        );

    /// <summary>IEC: a ring around the conductor.</summary>
    public static Sign CurrentRing { get; } =
        new(7.5, (pen, x, y) => pen.Line(x, y, x, y + 7.5).Ring(x, y + 3.75, 2));

    /// <summary>IEEE: two loops beside it.</summary>
    public static Sign CurrentLoops { get; } =
        new(
            7.5,
            (pen, x, y) =>
                pen.Line(x, y, x, y + 7.5)
                    .Arc(x + 0.75, y + 2.5, 1.25, 270, 180)
                    .Arc(x + 0.75, y + 5, 1.25, 270, 180)
        );
}
