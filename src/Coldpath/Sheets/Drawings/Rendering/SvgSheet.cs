using System.Globalization;
using System.Text;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>
/// A sheet as SVG 1.1: attributes alone, no style sheet, script or font inside. Each figure is a group that carries its
/// title and, as data attributes, what it stands for.
/// </summary>
public static class SvgSheet
{
    public static string Of(Drawing drawing, PlacedSheet sheet)
    {
        var svg = new StringBuilder();
        var (width, height) = (Number(sheet.Width), Number(sheet.Height));
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\"")
            .Append(Invariant, $" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\"")
            .Append(Invariant, $" font-family=\"{LetterWidths.Families}\" stroke-linecap=\"round\"")
            .Append(" stroke-linejoin=\"round\" fill=\"none\">\n");
        svg.Append(Invariant, $"<title>{XmlText.Of(TitleOf(drawing, sheet))}</title>\n");
        svg.Append(Invariant, $"<rect width=\"{width}\" height=\"{height}\" fill=\"#FFFFFF\"/>\n");
        foreach (var figure in sheet.Figures.Where(f => f.Shapes.Count > 0))
            Write(svg, figure);
        return svg.Append("</svg>\n").ToString();
    }

    private static string TitleOf(Drawing drawing, PlacedSheet sheet) =>
        $"{drawing.Title}, sheet {sheet.Number} of {drawing.Sheets.Count}: {sheet.Name}";

    private static void Write(StringBuilder svg, Figure figure)
    {
        svg.Append("<g");
        Attribute(svg, "data-kind", figure.Kind.ToString().ToLowerInvariant());
        Attribute(svg, "data-device", figure.Device);
        Attribute(svg, "data-part", figure.Part);
        Attribute(
            svg,
            "data-terminals",
            figure.Terminals.Count > 0 ? string.Join(' ', figure.Terminals) : null
        );
        Attribute(svg, "data-net", figure.Net);
        Attribute(svg, "data-span", SpanOf(figure));
        Attribute(svg, "data-tone", figure.Tone == Tone.Plain ? null : figure.Tone.ToString());
        Attribute(svg, "stroke", Tones.Colour(figure.Tone));
        svg.Append(Invariant, $">\n<title>{XmlText.Of(figure.Title)}</title>\n");
        foreach (var shape in figure.Shapes)
            SvgShape.Write(svg, shape, figure);
        svg.Append("</g>\n");
    }

    /// <summary>"line:column-line:column", from 1, the end exclusive.</summary>
    private static string? SpanOf(Figure figure) =>
        figure.Span is { } span
            ? string.Create(Invariant, $"{span.From.Line}:{span.From.Column}-{span.To.Line}:{span.To.Column}")
            : null;

    private static void Attribute(StringBuilder svg, string name, string? value)
    {
        if (value is not null)
            svg.Append(Invariant, $" {name}=\"{XmlText.Of(value)}\"");
    }

    internal static string Number(double value) =>
        (Math.Round(value, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);

    internal static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;
}
