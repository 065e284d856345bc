namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Letters that end in the names of places.</summary>
/// <param name="Letters">What stands before the places.</param>
/// <param name="Underlined">A normally closed contact.</param>
internal sealed record Mention(Lettering Letters, IReadOnlyList<Place> Places, bool Underlined = false)
{
    public Mention Moved(double x, double y) => this with { Letters = (Lettering)Letters.Moved(x, y) };

    public IEnumerable<Shape> Shapes(Func<Place, string> name)
    {
        var letters = Letters with
        {
            Text = new TextLine(
                Letters.Text,
                Letters.Size,
                Letters.Bold,
                Places.Count == 0 ? null : Places
            ).WithPlaces(name),
        };
        yield return letters;
        if (!Underlined)
            yield break;
        var (box, y) = (letters.Bounds, letters.At.Y + (letters.Size * LetterWidths.Descent));
        yield return new Polyline([new(box.Left, y), new(box.Right, y)], Ink.Fine);
    }
}

/// <summary>A figure with letters that wait for the sheets to be known.</summary>
internal sealed record Noted(Figure Figure, IReadOnlyList<Mention> Mentions)
{
    public Noted Moved(double x, double y) =>
        new(Figure.Moved(x, y), [.. Mentions.Select(m => m.Moved(x, y))]);

    public Figure Named(Func<Place, string> name) =>
        Figure with
        {
            Shapes = [.. Figure.Shapes, .. Mentions.SelectMany(m => m.Shapes(name))],
        };
}
