using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>A device that has nothing to draw.</summary>
internal static class BareCell
{
    /// <summary>Its tag over a box with what it is.</summary>
    public static LaidCell Of(PlacedDevice device, LadderFacts facts)
    {
        const double half = 2.5;
        var links = device.Blueprint.Links.Select(l => string.Join(" and ", l.Devices.Distinct()));
        var words = TextStack
            .Of(device.Blueprint.Kind.Name, Cells.TextSize)
            .With(TextStack.Of(string.Join(", ", links), Cells.TextSize));
        var width = Cells.OnGrid(words.Width + 2);
        var box = new Box(0, -half, width, -half + Math.Max(2 * half, words.Height + 2));
        var figure = new Figure
        {
            Kind = FigureKind.Label,
            Title = $"{device.Tag}, {device.Blueprint.Kind.Name}",
            Device = device.Tag,
            Span = device.Span,
            Tone = facts.ToneOf(device.Tag),
            Shapes = [],
        };
        At[] corners = [new(0, box.Top), new(width, box.Top), new(width, box.Bottom), new(0, box.Bottom)];
        var frame = figure with
        {
            Kind = FigureKind.Symbol,
            Shapes = [new Polyline(corners, Ink.Line, Closed: true)],
        };
        var tag = TextStack.Of(device.Tag, Cells.TagSize, bold: true);
        var up = half + 0.5 + tag.Height;
        var noted = words.At(frame, width / 2, box.Top + (box.Height - words.Height) / 2, Anchor.Middle);
        return new(
            Math.Max(width, tag.Width) + Cells.Grid,
            up,
            box.Bottom,
            0,
            0,
            null,
            null,
            false,
            [noted, tag.At(figure, width / 2, -up, Anchor.Middle)],
            []
        );
    }
}
