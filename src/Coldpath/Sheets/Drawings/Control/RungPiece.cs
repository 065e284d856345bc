using Coldpath.Findings;
using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>One conductor of a piece of a rung, between two knots.</summary>
/// <param name="In">The knot at its beginning.</param>
/// <param name="Out">The knot at its end.</param>
internal abstract record RungPiece(int In, int Out);

/// <summary>One after another; the end of each is the beginning of the next.</summary>
internal sealed record RungRow(IReadOnlyList<RungPiece> Pieces, int In, int Out) : RungPiece(In, Out);

/// <summary>Side by side.</summary>
/// <param name="OpenIn">Stands at the rung's beginning: each branch begins for itself.</param>
/// <param name="OpenOut">Stands at its end.</param>
internal sealed record RungFork(IReadOnlyList<RungPiece> Branches, int In, int Out, bool OpenIn, bool OpenOut)
    : RungPiece(In, Out);

/// <summary>A node, rail or wire number.</summary>
internal sealed record RungNode(string Name, Span Span, int At) : RungPiece(At, At);

/// <summary>A wire to the earth. The earth joins nothing: what meets at it is bonded, each for itself.</summary>
/// <param name="Begins">The wire begins here; else it ends.</param>
internal sealed record RungEarth(Span Span, int At, bool Begins) : RungPiece(At, At);

/// <summary>A part of a device, or a terminal of it.</summary>
/// <param name="Left">Its terminal on the left; null where the rung begins here.</param>
/// <param name="Right">Its terminal on the right; null where the rung ends here; equal to left where one is touched.</param>
internal sealed record RungPart(
    PlacedDevice Device,
    string Part,
    Contact? Contact,
    string? Left,
    string? Right,
    Span Span,
    int In,
    int Out
) : RungPiece(In, Out)
{
    /// <summary>Passed through, not only touched.</summary>
    public bool IsThrough => Left is not null && Right is not null && Left != Right;

    public IEnumerable<Terminal> Terminals =>
        new[] { Left, Right }.OfType<string>().Distinct().Select(t => new Terminal(Device.Tag, t));
}
