using Coldpath.Sheets.Drawings.Power;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>
/// A sheet's measures: paper, frame, and what is left for the drawing. Frame margins are those of ISO 5457, with room for
/// binding on the left of a sheet of fixed size.
/// </summary>
internal sealed record SheetSize(double Width, double Height, double Binding)
{
    public const double Margin = 10;
    public const double BindingMargin = 20;

    /// <summary>Between the frame and what is drawn.</summary>
    private const double Padding = 5;

    /// <summary>What is kept for the title block and the legend above it.</summary>
    public const double FootHeight = TitleBlock.Height + Legend.Height;

    public Box Frame => new(Binding, Margin, Width - Margin, Height - Margin);

    /// <summary>Where the drawing may be.</summary>
    public Box Content =>
        new(
            Frame.Left + Padding,
            Frame.Top + Padding,
            Frame.Right - Padding,
            Frame.Bottom - FootHeight - Padding
        );

    /// <summary>No drawing is made smaller than this: letters of 2.5 mm stay legible.</summary>
    public const double Smallest = 0.7;

    /// <summary>How large the part can be drawn here, at most in full size.</summary>
    public double ScaleFor(PlacedPart part) =>
        Math.Min(1, Math.Min(Content.Width / part.Width, Content.Height / part.Height));

    public bool Fits(PlacedPart part) => ScaleFor(part) >= Smallest;

    /// <summary>A sheet as large as its content, no narrower than its title block.</summary>
    public static SheetSize Around(PlacedPart part)
    {
        var width = Math.Max(part.Width + Padding * 2, TitleBlock.Narrowest);
        var size = new SheetSize(
            width + Margin * 2,
            part.Height + Padding * 2 + FootHeight + Margin * 2,
            Margin
        );
        return size with { Width = Math.Ceiling(size.Width), Height = Math.Ceiling(size.Height) };
    }

    /// <summary>Lying and standing.</summary>
    public static IReadOnlyList<SheetSize> Of(Paper paper) =>
        paper is { Width: { } width, Height: { } height }
            ? [new(width, height, BindingMargin), new(height, width, BindingMargin)]
            : [];
}
