namespace Coldpath.Sheets.Drawings.Control;

/// <summary>A line of a stack.</summary>
/// <param name="Places">Named behind the text, once their sheets are known.</param>
internal sealed record TextLine(
    string Text,
    double Size,
    bool Bold = false,
    IReadOnlyList<Place>? Places = null
)
{
    public double Height => Size * (LetterWidths.Ascent + LetterWidths.Descent + 0.1);

    /// <summary>In millimetres, with the longest names that its places may bear.</summary>
    public double Width => LetterWidths.Of(WithPlaces(SheetIndex.Longest), Size, Bold);

    public string WithPlaces(Func<Place, string> name) =>
        Places is null ? Text
        : Text.Length == 0 ? string.Join(", ", Places.Select(name))
        : $"{Text} {string.Join(", ", Places.Select(name))}";
}

/// <summary>Lines of text below each other that are one figure.</summary>
internal sealed record TextStack(IReadOnlyList<TextLine> Lines)
{
    public double Width => Lines.Select(l => l.Width).Append(0).Max();

    public double Height => Lines.Sum(l => l.Height);

    /// <summary>A text broken between its words, and within words that are longer than a line may be.</summary>
    /// <param name="most">Millimetres.</param>
    public static TextStack Of(string text, double size, bool bold = false, double most = 38) =>
        new([.. Broken(text, size, bold, most).Select(t => new TextLine(t, size, bold))]);

    public TextStack With(TextStack below) => new([.. Lines, .. below.Lines]);

    /// <summary>As a figure whose box begins at <paramref name="top"/>.</summary>
    /// <param name="x">Its start, middle or end, as anchored.</param>
    public Noted At(Figure figure, double x, double top, Anchor anchor)
    {
        var letters = new List<Mention>();
        foreach (var line in Lines)
        {
            var baseline = top + (line.Size * (LetterWidths.Ascent + 0.05));
            letters.Add(
                new(
                    new Lettering(new(x, baseline), line.Text, line.Size, anchor, line.Bold),
                    line.Places ?? []
                )
            );
            top += line.Height;
        }
        return new(figure, letters);
    }

    private static IEnumerable<string> Broken(string text, double size, bool bold, double most)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(Pieces))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && LetterWidths.Of(longer, size, bold) > most)
            {
                yield return line;
                longer = word;
            }
            line = longer;
        }
        if (line.Length > 0)
            yield return line;

        IEnumerable<string> Pieces(string word)
        {
            var piece = "";
            foreach (var rune in word.EnumerateRunes())
            {
                if (piece.Length > 0 && LetterWidths.Of($"{piece}{rune}", size, bold) > most)
                {
                    yield return piece;
                    piece = "";
                }
                piece += rune.ToString();
            }
            yield return piece;
        }
    }
}
