using System.Text;
using static Coldpath.Sheets.Drawings.Rendering.SvgSheet;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>One mark as an element. The group around it has its stroke's colour.</summary>
internal static class SvgShape
{
    public static void Write(StringBuilder svg, Shape shape, Figure figure)
    {
        var isWire = figure.Kind is FigureKind.Wire or FigureKind.Paper;
        switch (shape)
        {
            case Polyline line:
                svg.Append(line.Closed ? "<polygon points=\"" : "<polyline points=\"")
                    .AppendJoin(' ', line.Points.Select(p => $"{Number(p.X)},{Number(p.Y)}"))
                    .Append('"');
                End(svg, line.Ink, line.Filled, figure.Tone, isWire);
                break;
            case Ring ring:
                svg.Append(
                    Invariant,
                    $"<circle cx=\"{Number(ring.Centre.X)}\" cy=\"{Number(ring.Centre.Y)}\" r=\"{Number(ring.Radius)}\""
                );
                End(svg, ring.Ink, ring.Filled, figure.Tone, isWire: false);
                break;
            case Arc arc:
                Write(svg, arc);
                End(svg, arc.Ink, false, figure.Tone, isWire);
                break;
            case Lettering letters:
                Write(svg, letters, figure.Tone);
                break;
        }
    }

    private static void Write(StringBuilder svg, Arc arc)
    {
        var (from, to) = (On(arc, arc.From), On(arc, arc.From + arc.Sweep));
        var large = arc.Sweep > 180 ? 1 : 0;
        var radius = Number(arc.Radius);
        svg.Append(
            Invariant,
            $"<path d=\"M{Number(from.X)} {Number(from.Y)}A{radius} {radius} 0 {large} 1 {Number(to.X)} {Number(to.Y)}\""
        );
    }

    private static void Write(StringBuilder svg, Lettering letters, Tone tone)
    {
        var (x, y) = (Number(letters.At.X), Number(letters.At.Y));
        svg.Append(Invariant, $"<text x=\"{x}\" y=\"{y}\" font-size=\"{Number(letters.Size)}\"");
        if (letters.Anchor != Anchor.Start)
            svg.Append(letters.Anchor == Anchor.Middle ? " text-anchor=\"middle\"" : " text-anchor=\"end\"");
        if (letters.Bold)
            svg.Append(" font-weight=\"bold\"");
        if (letters.Upwards)
            svg.Append(Invariant, $" transform=\"rotate(-90 {x} {y})\"");
        svg.Append(Invariant, $" stroke=\"none\" fill=\"{Tones.Colour(tone)}\" xml:space=\"preserve\">")
            .Append(Invariant, $"{XmlText.Of(letters.Text)}</text>\n");
    }

    private static void End(StringBuilder svg, Ink ink, bool filled, Tone tone, bool isWire)
    {
        var stroke = Tones.Of(ink, tone, isWire);
        svg.Append(Invariant, $" stroke-width=\"{Number(stroke.Width)}\"");
        if (stroke.Dashes.Count > 0)
            svg.Append(" stroke-dasharray=\"")
                .AppendJoin(' ', stroke.Dashes.Select(Number))
                .Append("\" stroke-linecap=\"butt\"");
        if (filled)
            svg.Append(Invariant, $" fill=\"{stroke.Colour}\"");
        svg.Append("/>\n");
    }

    private static At On(Arc arc, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return arc.Centre.Plus(arc.Radius * cos, arc.Radius * sin);
    }
}
