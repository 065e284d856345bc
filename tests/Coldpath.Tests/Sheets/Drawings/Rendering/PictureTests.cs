using System.Text;
using Coldpath.Sheets.Drawings.Rendering;
using Coldpath.Tests.Cli;
using FluentAssertions;
using SkiaSharp;

namespace Coldpath.Tests.Sheets.Drawings.Rendering;

public class PictureTests
{
    [Fact]
    public void A_pdf_has_a_page_for_each_sheet_and_its_text_can_be_picked()
    {
        using var desk = new Desk();
        File.WriteAllBytes(desk.At("a.pdf"), PdfSheets.Of(SpecimenSheet.Drawing));
        var (info, _) = Tool.Run("pdfinfo", desk.At("a.pdf"));
        info.Should().MatchRegex(@"Pages:\s+2\n").And.MatchRegex(@"Page size:\s+420\.\d+ x 297\.\d+ pts");
        var (text, _) = Tool.Run("pdftotext", desk.At("a.pdf"), "-");
        text.Should().ContainAll("K1:13-14", "é", "Ω", "Upwards Bold");
        var (fonts, _) = Tool.Run("pdffonts", desk.At("a.pdf"));
        fonts.Should().Contain("LiberationSans");
    }

    [Fact]
    public void The_same_drawing_gives_the_same_bytes()
    {
        PdfSheets.Of(SpecimenSheet.Drawing).Should().Equal(PdfSheets.Of(SpecimenSheet.Drawing));
        var sheet = SpecimenSheet.Drawing.Sheets[0];
        PngSheet.Of(sheet, 100).Should().Equal(PngSheet.Of(sheet, 100)!);
        Encoding.Latin1.GetString(PdfSheets.Of(SpecimenSheet.Drawing)).Should().Contain("D:20000101");
    }

    [Fact]
    public void A_png_is_as_large_as_asked_and_not_empty()
    {
        using var picture = SKBitmap.Decode(PngSheet.Of(SpecimenSheet.Drawing.Sheets[0], 254));
        (picture.Width, picture.Height).Should().Be((1485, 1050));
        picture.GetPixel(0, 0).Should().Be(SKColors.White);
        // Inside the filled triangle.
        picture.GetPixel(30, 220).Should().NotBe(SKColors.White);
    }

    [Fact]
    public void A_png_that_no_memory_holds_is_refused() =>
        PngSheet
            .Of(SpecimenSheet.Drawing.Sheets[0] with { Width = 5000, Height = 5000 }, 1200)
            .Should()
            .BeNull();
}
