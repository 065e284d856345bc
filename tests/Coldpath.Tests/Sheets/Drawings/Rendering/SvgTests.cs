using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Rendering;
using Coldpath.Tests.Cli;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings.Rendering;

public partial class SvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly string Text = SvgSheet.Of(SpecimenSheet.Drawing, SpecimenSheet.Drawing.Sheets[0]);

    [Fact]
    public void It_is_valid_xml_with_nothing_but_shapes_and_attributes()
    {
        var root = XDocument.Parse(Text).Root!;
        root.Name.Should().Be(Svg + "svg");
        root.Descendants()
            .Select(e => e.Name.LocalName)
            .Distinct()
            .Should()
            .BeSubsetOf(["title", "rect", "g", "polyline", "polygon", "circle", "path", "text"]);
        root.DescendantsAndSelf()
            .Attributes()
            .Select(a => a.Name.LocalName)
            .Should()
            .NotContain(a => a == "style" || a == "href" || a.StartsWith("on", StringComparison.Ordinal));
    }

    [Fact]
    public void It_says_its_size_and_what_it_is()
    {
        var root = XDocument.Parse(Text).Root!;
        root.Attribute("role")!.Value.Should().Be("img");
        root.Attribute("width")!.Value.Should().Be("148.5mm");
        root.Attribute("viewBox")!.Value.Should().Be("0 0 148.5 105");
        root.Elements().First().Name.Should().Be(Svg + "title");
        root.Elements().First().Value.Should().Contain("sheet 1 of 2: power");
    }

    [Fact]
    public void A_figure_says_what_it_stands_for()
    {
        var figures = XDocument.Parse(Text).Root!.Elements(Svg + "g").ToList();
        figures.Should().OnlyContain(g => g.Elements().First().Name == Svg + "title");
        figures.Should().NotContain(g => g.Elements().First().Value == "not drawn");
        var figure = figures.Single(g => g.Elements().First().Value == "K1, contactor");
        figure.Attribute("data-kind")!.Value.Should().Be("symbol");
        figure.Attribute("data-device")!.Value.Should().Be("K1");
        figure.Attribute("data-part")!.Value.Should().Be("NO");
        figure.Attribute("data-terminals")!.Value.Should().Be("13 14");
        figure.Attribute("data-net")!.Value.Should().Be("104");
        figure.Attribute("data-span")!.Value.Should().Be("2:1-2:3");
    }

    [Fact]
    public void No_control_or_reordering_character_comes_through()
    {
        Text.Should().NotContainAny("\u0007", "\u202E", "\uFFFF", "<script").And.Contain("&lt;script&gt;");
        Text.Where(c => char.IsControl(c) && c != '\n').Should().BeEmpty();
    }

    [Fact]
    public void Numbers_have_at_most_three_decimals() => LongNumber().Matches(Text).Should().BeEmpty();

    [Fact]
    public void The_same_drawing_gives_the_same_bytes_in_any_culture_and_on_any_thread()
    {
        var texts = new string[16];
        Parallel.For(
            0,
            texts.Length,
            i =>
            {
                CultureInfo.CurrentCulture = i % 2 == 0 ? Comma() : CultureInfo.InvariantCulture;
                texts[i] = SvgSheet.Of(SpecimenSheet.Drawing, SpecimenSheet.Drawing.Sheets[0]);
            }
        );
        texts.Should().OnlyContain(t => t == Text);
    }

    [Fact]
    public void A_browser_opens_it_without_a_word()
    {
        using var desk = new Desk().With("a.svg", Text);
        var (dom, log) = Tool.Browse(desk.At("a.svg"));
        dom.Should().Contain("data-device=\"K1\"").And.NotContain("parsererror");
        log.Split('\n').Where(l => l.Contains("CONSOLE", StringComparison.Ordinal)).Should().BeEmpty();
    }

    [Fact]
    public void Another_renderer_takes_it()
    {
        using var desk = new Desk().With("a.svg", Text);
        var (_, error) = Tool.Run("rsvg-convert", desk.At("a.svg"), "-o", desk.At("a.png"));
        error.Should().BeEmpty();
        new FileInfo(desk.At("a.png")).Length.Should().BeGreaterThan(1000);
    }

    private static CultureInfo Comma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NegativeSign = "~";
        return culture;
    }

    [GeneratedRegex("[0-9]\\.[0-9]{4,}")]
    private static partial Regex LongNumber();
}
