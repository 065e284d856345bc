namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Where the rails stand and the loads are lined up, in millimetres from the left.</summary>
/// <param name="Width">Of the whole, margins included.</param>
/// <param name="Left">The left rail.</param>
/// <param name="Right">The right rail.</param>
internal sealed record LadderFrame(double Width, double Left, double Right)
{
    public const double NumberSize = 2.8;

    /// <summary>Between a rail and what begins or ends with a flag beside it.</summary>
    public const double Aside = 4;

    /// <summary>Room at a rail for the sign of the earth.</summary>
    private const double Margin = 8;

    public static LadderFrame Of(IReadOnlyList<Rung> rungs, double width)
    {
        var numbers = rungs.Select(r => LetterWidths.Of(r.Number, NumberSize, true)).Append(0).Max();
        return new(width, Math.Max(Margin, numbers + 3), width - Margin);
    }
}
