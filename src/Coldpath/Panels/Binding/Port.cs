using Coldpath.Findings;

namespace Coldpath.Panels.Binding;

/// <summary>The conductors at one place of a chain.</summary>
/// <param name="Of">The name in the text that offers them.</param>
/// <param name="Pins">Where each conductor is.</param>
/// <param name="Conductors">What each is called, such as L1; as many.</param>
/// <param name="Span">The name's place.</param>
internal sealed record Port(string Of, IReadOnlyList<Pin> Pins, IReadOnlyList<string> Conductors, Span Span)
{
    public int Width => Pins.Count;

    public bool IsEarth => Pins is [{ IsEarth: true }];

    /// <summary>Whether a neutral or protective conductor was named into this chain.</summary>
    public bool HasNeutral => Conductors.Any(Markings.IsNeutralOrEarth);

    /// <summary>"3 conductors (L1, L2, L3)".</summary>
    public string Described =>
        $"{Width} conductor{(Width == 1 ? "" : "s")} ({string.Join(", ", Conductors)})";
}

/// <summary>What a name offers in its place of a chain.</summary>
/// <param name="Left">Towards the beginning; null when it begins the chain or is not known.</param>
/// <param name="Right">Towards the end; null when it ends the chain or is not known.</param>
internal sealed record Meeting(Port? Left, Port? Right, ChainPiece Piece);
