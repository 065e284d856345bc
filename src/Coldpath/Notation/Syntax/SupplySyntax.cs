using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>What may be said after the comma of a <c>source</c> or a <c>converter</c>; null or false when not.</summary>
/// <param name="Group">The words after <c>group</c>; empty when not said.</param>
/// <param name="Limited">Cannot deliver its short.</param>
/// <param name="ExtraLow">SELV or PELV.</param>
/// <param name="StoredBy">The variable of a store.</param>
/// <param name="Discharge">The rating with the discharge time.</param>
public sealed record SupplyOptionsSyntax(
    ConditionSyntax? PresentWhen,
    IReadOnlyList<WordSyntax> Group,
    bool Limited,
    bool ExtraLow,
    bool Dc,
    WordSyntax? StoredBy,
    ArithmeticSyntax? Discharge
);

/// <summary><c>source NAME, … end</c>.</summary>
/// <param name="Name">Null when it has the device's own name.</param>
/// <param name="Lines"><see cref="SupplyConductorSyntax"/>, <see cref="IfSyntax"/> and broken lines.</param>
public sealed record SourceSyntax(
    WordSyntax? Name,
    SupplyOptionsSyntax Options,
    IReadOnlyList<KindLineSyntax> Lines,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>converter transformer out from [H1, H4], when C … end</c>.</summary>
/// <param name="Type">transformer, rectifier, drive or ups.</param>
/// <param name="Name">Null when it has the device's own name.</param>
/// <param name="When">Null: always.</param>
/// <param name="Lines">
/// <see cref="WindingSyntax"/>, <see cref="SupplyConductorSyntax"/>, <see cref="IfSyntax"/> and broken lines.
/// </param>
public sealed record ConverterSyntax(
    WordSyntax Type,
    WordSyntax? Name,
    ListSyntax From,
    ConditionSyntax? When,
    SupplyOptionsSyntax Options,
    IReadOnlyList<KindLineSyntax> Lines,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>conductor [L1] at 277 V angle 0</c>, inside a source or a converter.</summary>
/// <param name="At">Volts.</param>
/// <param name="Angle">Degrees; null for DC or 0.</param>
/// <param name="PresentWhen">This conductor alone; null: as the supply.</param>
public sealed record SupplyConductorSyntax(
    WordSyntax Terminal,
    ArithmeticSyntax At,
    ArithmeticSyntax? Angle,
    SupplyPolarity Polarity,
    ConditionSyntax? PresentWhen,
    Span Span
) : KindLineSyntax(Span);

/// <summary>What is said behind a conductor: nothing, <c>plus</c> or <c>minus</c>.</summary>
public enum SupplyPolarity
{
    NotSaid,
    Plus,
    Minus,
}

/// <summary><c>winding [H1, H4]</c>, inside a converter.</summary>
public sealed record WindingSyntax(ListSyntax Terminals, Span Span) : KindLineSyntax(Span);

/// <summary><c>coupling [U1, V1, W1] [U2, V2, W2], from first</c>.</summary>
public sealed record CouplingSyntax(IReadOnlyList<ListSyntax> Windings, bool FromFirst, Span Span)
    : KindLineSyntax(Span);

/// <summary><c>mode delta feeds [U1, V1, W1], joined [U1 - W2] [V1 - U2], turns forward, speed 1780</c>.</summary>
/// <param name="Turns">forward, reverse or another word; null when not said.</param>
public sealed record ModeSyntax(
    IReadOnlyList<WordSyntax> Name,
    ListSyntax Feeds,
    IReadOnlyList<PairSyntax> Joined,
    IReadOnlyList<PairSyntax> Apart,
    WordSyntax? Turns,
    ArithmeticSyntax? Speed,
    Span Span
) : KindLineSyntax(Span);
