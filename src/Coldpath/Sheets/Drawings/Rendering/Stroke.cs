namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>How a line comes onto paper.</summary>
/// <param name="Width">Millimetres.</param>
/// <param name="Dashes">Lengths of line and gap in turn, in millimetres; empty for a full line.</param>
/// <param name="Colour">"#RRGGBB".</param>
internal sealed record Stroke(double Width, IReadOnlyList<double> Dashes, string Colour);
