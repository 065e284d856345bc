namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>
/// The one table of how inks and tones look. Tones differ in weight and, on wires, in dash as well, so that a copy
/// without colour says the same; every colour is dark enough for letters on white (at least 4.5 to 1).
/// </summary>
internal static class Tones
{
    /// <param name="Weight">Factor on the ink's width.</param>
    /// <param name="Dashes">Of wires.</param>
    private sealed record Look(double Weight, double[] Dashes, string Colour);

    /// <summary>The whole weight of a wire would fill the small details of a symbol.</summary>
    private static double OfSymbol(double weight) => weight <= 1 ? weight : (1 + weight) / 2;

    public static string Colour(Tone tone) => LookOf(tone).Colour;

    /// <param name="ink">Of the shape.</param>
    /// <param name="tone">Of its figure.</param>
    /// <param name="isWire">Symbols keep full lines: dashes would break their shapes.</param>
    public static Stroke Of(Ink ink, Tone tone, bool isWire)
    {
        var look = LookOf(tone);
        var (width, dashes) = Plain(ink);
        return ink is Ink.Dashed or Ink.DashDot
            ? new(width, dashes, look.Colour)
            : new(
                Math.Round(width * (isWire ? look.Weight : OfSymbol(look.Weight)), 3),
                isWire ? look.Dashes : dashes,
                look.Colour
            );
    }

    private static Look LookOf(Tone tone) =>
        tone switch
        {
            Tone.SolidlyLive => new(2, [], "#B00020"),
            Tone.LooselyLive => new(1.5, [2, 1], "#9C4A00"),
            Tone.Dead => new(0.6, [], "#666666"),
            Tone.Marked => new(2.6, [4, 1, 1, 1], "#6A1B9A"),
            _ => new(1, [], "#000000"),
        };

    private static (double Width, double[] Dashes) Plain(Ink ink) =>
        ink switch
        {
            Ink.Fine => (0.18, []),
            Ink.Heavy => (0.7, []),
            Ink.Dashed => (0.25, [1, 0.7]),
            Ink.DashDot => (0.18, [4, 1, 0.6, 1]),
            _ => (0.35, []),
        };
}
