using Coldpath.Findings;

namespace Coldpath.Panels;

/// <summary>A chain or rung as written, with what each name in it stands for.</summary>
/// <param name="Rung">Its number on the drawing; null for a chain.</param>
/// <param name="Root">What it joins, from the line side to the load side.</param>
/// <param name="Span">The whole line.</param>
public sealed record Chain(string? Rung, ChainPiece Root, Span Span)
{
    public IEnumerable<Passage> Passages => PassagesIn(Root);

    /// <summary>All devices in a piece, from its beginning to its end, branch by branch.</summary>
    internal static IEnumerable<Passage> PassagesIn(ChainPiece piece) =>
        piece switch
        {
            Passage passage => [passage],
            InSeries series => series.Pieces.SelectMany(PassagesIn),
            InParallel parallel => parallel.Branches.SelectMany(PassagesIn),
            _ => [],
        };
}

/// <summary>Part of a chain.</summary>
public abstract record ChainPiece(Span Span);

/// <summary>One after another.</summary>
public sealed record InSeries(IReadOnlyList<ChainPiece> Pieces, Span Span) : ChainPiece(Span);

/// <summary>Side by side.</summary>
public sealed record InParallel(IReadOnlyList<ChainPiece> Branches, Span Span) : ChainPiece(Span);

/// <summary>A device that the chain begins at, passes through or ends at.</summary>
/// <param name="Device">Its tag.</param>
/// <param name="Part">The words around the tag: "coil", "NC trip", "at"; empty for a bare name.</param>
/// <param name="Contact">The contact used, when the part is one of a family.</param>
/// <param name="Left">Terminals towards the chain's beginning, one a conductor; empty where it begins here.</param>
/// <param name="Right">Terminals towards its end; empty where it ends here. Equal to left for terminals that are
/// only touched.</param>
public sealed record Passage(
    string Device,
    string Part,
    Contact? Contact,
    IReadOnlyList<string> Left,
    IReadOnlyList<string> Right,
    Span Span
) : ChainPiece(Span)
{
    /// <summary>Passed through, not only touched.</summary>
    public bool IsThrough => Left.Count > 0 && Right.Count > 0 && !Left.SequenceEqual(Right);

    /// <summary>The poles passed, by the device's own line and load side whatever the crossing.</summary>
    public required IReadOnlyList<(string Left, string Right)> Poles { get; init; }
}

/// <summary>A node, rail or numbered wire, or "PE".</summary>
public sealed record NodeStop(string Name, Span Span) : ChainPiece(Span);
