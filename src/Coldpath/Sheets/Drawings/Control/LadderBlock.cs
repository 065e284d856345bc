namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// Rungs that hang together, or a line of parts that stand apart: what a page's end may not cut. Millimetres from its
/// upper left corner; rails are drawn through it when it has its place.
/// </summary>
internal sealed record LadderBlock
{
    /// <summary>Index of its section.</summary>
    public required int Section { get; init; }
    public required double Height { get; init; }

    /// <summary>How much wider it is than it should be.</summary>
    public double Overflow { get; init; }
    public required IReadOnlyList<Noted> Figures { get; init; }
    public required IReadOnlyList<Figure> Wires { get; init; }

    /// <summary>Heights at which rungs begin at the left rail.</summary>
    public IReadOnlyList<double> LeftTaps { get; init; } = [];

    /// <summary>Heights at which rungs end at the right rail.</summary>
    public IReadOnlyList<double> RightTaps { get; init; } = [];
    public IReadOnlyList<Rung> Rungs { get; init; } = [];

    /// <summary>Where each rung ends.</summary>
    public IReadOnlyList<double> Bottoms { get; init; } = [];
}
