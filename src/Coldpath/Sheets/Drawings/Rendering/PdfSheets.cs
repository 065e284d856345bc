using SkiaSharp;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>All sheets of a drawing as the pages of one PDF. Its dates are fixed: the same drawing gives the same bytes.</summary>
public static class PdfSheets
{
    private const float PointsAMillimetre = 72 / 25.4f;
    private static readonly DateTime Fixed = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    public static byte[] Of(Drawing drawing)
    {
        using var stream = new MemoryStream();
        var facts = new SKDocumentPdfMetadata
        {
            Title = Harmless.Text(drawing.Title),
            Creator = "Coldpath",
            Producer = "Coldpath",
            Creation = Fixed,
            Modified = Fixed,
            EncodingQuality = 101,
            RasterDpi = 300,
        };
        using (var faces = new Faces())
        using (var document = SKDocument.CreatePdf(stream, facts))
        {
            foreach (var sheet in drawing.Sheets)
                Page(document, sheet, faces);
            document.Close();
        }
        return stream.ToArray();
    }

    private static void Page(SKDocument document, PlacedSheet sheet, Faces faces)
    {
        var canvas = document.BeginPage(
            (float)sheet.Width * PointsAMillimetre,
            (float)sheet.Height * PointsAMillimetre
        );
        canvas.Scale(PointsAMillimetre);
        new Painter(canvas, faces).Paint(sheet);
        document.EndPage();
    }
}
