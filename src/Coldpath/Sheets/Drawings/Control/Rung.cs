using Coldpath.Findings;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>One line of the ladder.</summary>
/// <param name="Index">Its place among all rungs, from 0; -1 for a part that stands apart.</param>
/// <param name="Number">As declared; "R1" and so on for chains without one; the first terminal of a part apart.</param>
/// <param name="Start">The node or terminal that it begins at; null when it begins with a group.</param>
/// <param name="Body">What stands between its ends, from left to right.</param>
/// <param name="End">The node or terminal that it ends at; null when it ends with a group.</param>
internal sealed record Rung(
    int Index,
    string Number,
    Span Span,
    RungPiece? Start,
    IReadOnlyList<RungPiece> Body,
    RungPiece? End
)
{
    /// <summary>A part that nothing is wired to.</summary>
    public bool IsSpare { get; init; }

    public bool IsApart => Index < 0;

    /// <summary>"rung 5".</summary>
    public string Words => IsApart ? "in no rung" : $"rung {Number}";

    /// <summary>Everything in it that stands for itself, from its beginning to its end, branch by branch.</summary>
    public IEnumerable<RungPiece> Leaves =>
        new[] { Start }.Concat(Body).Append(End).OfType<RungPiece>().SelectMany(LeavesIn);

    public static IEnumerable<RungPiece> LeavesIn(RungPiece piece) =>
        piece switch
        {
            RungRow row => row.Pieces.SelectMany(LeavesIn),
            RungFork fork => fork.Branches.SelectMany(LeavesIn),
            _ => [piece],
        };
}
