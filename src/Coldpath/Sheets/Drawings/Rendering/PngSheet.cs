using SkiaSharp;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>A sheet as a PNG picture, white paper and all.</summary>
public static class PngSheet
{
    /// <summary>The most that a picture may have; four bytes of memory each.</summary>
    public const long MostPixels = 150_000_000;

    private const double MillimetresAnInch = 25.4;

    /// <param name="dpi">Dots an inch.</param>
    /// <returns>Null when the picture would have more than <see cref="MostPixels"/>.</returns>
    public static byte[]? Of(PlacedSheet sheet, int dpi)
    {
        var scale = dpi / MillimetresAnInch;
        var (width, height) = (Math.Ceiling(sheet.Width * scale), Math.Ceiling(sheet.Height * scale));
        if (width * height > MostPixels)
            return null;
        var info = new SKImageInfo((int)width, (int)height, SKColorType.Rgba8888, SKAlphaType.Premul);
        using var surface = SKSurface.Create(info);
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale((float)scale);
        using var faces = new Faces();
        new Painter(surface.Canvas, faces).Paint(sheet);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
