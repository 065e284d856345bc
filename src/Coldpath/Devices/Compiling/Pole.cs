using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>One turn of a <c>for each pole</c>.</summary>
/// <param name="Number">From 1.</param>
/// <param name="IsOnly">The block has this one turn: what it declares needs no number.</param>
/// <param name="Ends">Its line side and load side.</param>
internal sealed record Pole(int Number, bool IsOnly, PairSyntax Ends);

/// <summary>A line of a kind that holds for the device, with the pole it belongs to.</summary>
internal sealed record PlacedLine(KindLineSyntax Line, Pole? Pole);
