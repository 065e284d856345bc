using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Symbols;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>What every symbol must keep to.</summary>
internal static class SymbolLooks
{
    public static void ShouldReach(this Symbol symbol, At place, string because) =>
        Ends(symbol).Should().Contain(place, because);

    public static void ShouldBeTidy(this Symbol symbol, string because)
    {
        foreach (var shape in symbol.Shapes)
            Inside(shape.Bounds, symbol.Body.Grown(0.01))
                .Should()
                .BeTrue($"{because}: {shape} lies in {symbol.Body}");
        (symbol.Height % Pen.M).Should().Be(0, because);
        ShouldBeLegible(symbol, because);
        foreach (var at in symbol.Shapes.SelectMany(Places))
            (Math.Round(at.X, 3) == at.X && Math.Round(at.Y, 3) == at.Y).Should().BeTrue($"{because}: {at}");
    }

    /// <summary>No letters on letters, no line through letters.</summary>
    private static void ShouldBeLegible(Symbol symbol, string because)
    {
        var letters = symbol.Shapes.OfType<Lettering>().ToList();
        for (var i = 0; i < letters.Count; i++)
        {
            var box = Glyphs(letters[i]);
            foreach (var other in letters.Skip(i + 1))
                box.Overlaps(Glyphs(other))
                    .Should()
                    .BeFalse($"{because}: '{letters[i].Text}' and '{other.Text}'");
            foreach (var (from, to) in symbol.Shapes.OfType<Polyline>().SelectMany(Segments))
                Crosses(from, to, box)
                    .Should()
                    .BeFalse($"{because}: '{letters[i].Text}' and a line {from} {to}");
        }
    }

    /// <summary>What capitals cover.</summary>
    private static Box Glyphs(Lettering letters) =>
        letters.Bounds with
        {
            Top = letters.At.Y - 0.72 * letters.Size,
            Bottom = letters.At.Y,
        };

    private static bool Crosses(At from, At to, Box box)
    {
        const int steps = 200;
        return Enumerable
            .Range(0, steps + 1)
            .Select(i => new At(from.X + (to.X - from.X) * i / steps, from.Y + (to.Y - from.Y) * i / steps))
            .Any(p => p.X > box.Left && p.X < box.Right && p.Y > box.Top && p.Y < box.Bottom);
    }

    private static IEnumerable<(At From, At To)> Segments(Polyline line) =>
        line.Points.Zip(line.Closed ? [.. line.Points.Skip(1), line.Points[0]] : line.Points.Skip(1));

    private static IEnumerable<At> Ends(Symbol symbol) =>
        symbol.Shapes.OfType<Polyline>().SelectMany(l => new[] { l.Points[0], l.Points[^1] });

    private static IEnumerable<At> Places(Shape shape) =>
        shape switch
        {
            Polyline line => line.Points,
            Ring ring => [ring.Centre],
            Arc arc => [arc.Centre],
            Lettering letters => [letters.At],
            _ => [],
        };

    private static bool Inside(Box box, Box body) =>
        box.Left >= body.Left && box.Right <= body.Right && box.Top >= body.Top && box.Bottom <= body.Bottom;
}
