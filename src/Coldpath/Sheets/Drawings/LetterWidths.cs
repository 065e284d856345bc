namespace Coldpath.Sheets.Drawings;

/// <summary>
/// How wide letters are, from the advance widths of the metric-compatible sans-serif faces that every system has
/// under one of the names in <see cref="Families"/>.
/// </summary>
public static class LetterWidths
{
    /// <summary>Asked for in this order.</summary>
    public const string Families = "Arial, Helvetica, 'Liberation Sans', sans-serif";

    /// <summary>Above and below the baseline, in parts of the font size.</summary>
    public const double Ascent = 0.75;
    public const double Descent = 0.22;

    /// <summary>Length of a text in millimetres.</summary>
    public static double Of(string text, double size, bool bold) => text.Length * size * (bold ? 0.6 : 0.55);
}
