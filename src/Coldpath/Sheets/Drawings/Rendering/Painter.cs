using SkiaSharp;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>Puts a sheet on a canvas whose unit is the millimetre.</summary>
internal sealed class Painter(SKCanvas canvas, Faces faces)
{
    public void Paint(PlacedSheet sheet)
    {
        foreach (var figure in sheet.Figures)
        foreach (var shape in figure.Shapes)
            Paint(shape, figure);
    }

    private void Paint(Shape shape, Figure figure)
    {
        switch (shape)
        {
            case Polyline line:
                Paint(line, figure);
                break;
            case Ring ring:
                Paint(ring, figure);
                break;
            case Arc arc:
                using (var paint = Pen(arc.Ink, figure, isWire: false))
                    canvas.DrawArc(
                        Around(arc.Centre, arc.Radius),
                        (float)arc.From,
                        (float)arc.Sweep,
                        false,
                        paint
                    );
                break;
            case Lettering letters:
                Paint(letters, figure.Tone);
                break;
        }
    }

    private void Paint(Polyline line, Figure figure)
    {
        using var path = new SKPathBuilder();
        path.AddPoly([.. line.Points.Select(Point)], line.Closed);
        using var detached = path.Detach();
        using var paint = Pen(line.Ink, figure, figure.Kind is FigureKind.Wire or FigureKind.Paper);
        if (line.Filled)
            paint.Style = SKPaintStyle.StrokeAndFill;
        canvas.DrawPath(detached, paint);
    }

    private void Paint(Ring ring, Figure figure)
    {
        using var paint = Pen(ring.Ink, figure, isWire: false);
        if (ring.Filled)
            paint.Style = SKPaintStyle.StrokeAndFill;
        canvas.DrawCircle(Point(ring.Centre), (float)ring.Radius, paint);
    }

    private void Paint(Lettering letters, Tone tone)
    {
        using var font = new SKFont(letters.Bold ? faces.Bold : faces.Regular, (float)letters.Size)
        {
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
            Edging = SKFontEdging.Antialias,
        };
        using var paint = new SKPaint { Color = SKColor.Parse(Tones.Colour(tone)), IsAntialias = true };
        canvas.Save();
        canvas.Translate((float)letters.At.X, (float)letters.At.Y);
        if (letters.Upwards)
            canvas.RotateDegrees(-90);
        canvas.DrawText(Harmless.Text(letters.Text), 0, 0, Align(letters.Anchor), font, paint);
        canvas.Restore();
    }

    private static SKPaint Pen(Ink ink, Figure figure, bool isWire)
    {
        var stroke = Tones.Of(ink, figure.Tone, isWire);
        var paint = new SKPaint
        {
            Style = SKPaintStyle.Stroke,
            StrokeWidth = (float)stroke.Width,
            Color = SKColor.Parse(stroke.Colour),
            StrokeJoin = SKStrokeJoin.Round,
            StrokeCap = stroke.Dashes.Count > 0 ? SKStrokeCap.Butt : SKStrokeCap.Round,
            IsAntialias = true,
        };
        if (stroke.Dashes.Count > 0)
            paint.PathEffect = SKPathEffect.CreateDash([.. stroke.Dashes.Select(d => (float)d)], 0);
        return paint;
    }

    private static SKTextAlign Align(Anchor anchor) =>
        anchor switch
        {
            Anchor.Middle => SKTextAlign.Center,
            Anchor.End => SKTextAlign.Right,
            _ => SKTextAlign.Left,
        };

    private static SKPoint Point(At at) => new((float)at.X, (float)at.Y);

    private static SKRect Around(At at, double radius) =>
        new((float)(at.X - radius), (float)(at.Y - radius), (float)(at.X + radius), (float)(at.Y + radius));
}
