using System.Text;
using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Rendering;

namespace Coldpath.Cli.Commands;

/// <summary>Renders a drawing and hands it out: one file for each sheet, or one PDF for all.</summary>
internal sealed class DrawingDelivery(Outside outside, DrawingTarget target)
{
    public Exit Put(Drawing drawing)
    {
        if (target.Sheet > drawing.Sheets.Count)
            return Refuse($"there is no sheet {target.Sheet}: the drawing has {Count(drawing)}");
        var sheets = drawing.Sheets.Where(s => target.Sheet is null || s.Number == target.Sheet).ToList();
        if (target.Format == "pdf")
            return Put([PdfSheets.Of(drawing with { Sheets = sheets })], sheets);
        if (target.IsStandardOutput && sheets.Count > 1)
            return Refuse(
                $"the drawing has {Count(drawing)}, the standard output takes one: add --sheet N, or write a pdf"
            );
        var pictures = new List<byte[]>();
        foreach (var sheet in sheets)
            if (Picture(drawing, sheet) is { } picture)
                pictures.Add(picture);
            else
                return Refuse(
                    $"sheet {sheet.Number} is too large for a png of {target.Dpi} dpi: lower --dpi"
                );
        return Put(pictures, sheets);
    }

    private Exit Put(List<byte[]> pictures, List<PlacedSheet> sheets)
    {
        if (target.IsStandardOutput)
        {
            if (outside.OutIsTerminal && target.Format != "svg")
                return Refuse($"a {target.Format} would spoil the terminal: give a file, or a pipe");
            outside.Put(pictures[0]);
            return Exit.Clean;
        }
        if (pictures.Count == 1)
        {
            Sources.Save(target.File, pictures[0], outside);
            return Exit.Clean;
        }
        var files = sheets.ConvertAll(s => target.FileOf(s.Number));
        foreach (var (file, picture) in files.Zip(pictures))
            Sources.Save(file, picture, outside);
        Terminal.Complain(outside, $"wrote {string.Join(", ", files)}");
        return Exit.Clean;
    }

    private byte[]? Picture(Drawing drawing, PlacedSheet sheet) =>
        target.Format == "svg"
            ? Encoding.UTF8.GetBytes(SvgSheet.Of(drawing, sheet))
            : PngSheet.Of(sheet, target.Dpi);

    private static string Count(Drawing drawing) =>
        drawing.Sheets.Count == 1 ? "1 sheet" : $"{drawing.Sheets.Count} sheets";

    private Exit Refuse(string problem)
    {
        Terminal.Complain(outside, problem);
        return Exit.Unusable;
    }
}
