namespace Coldpath.Sheets.Drawings.Control;

/// <summary>The contacts of a coil: a row each with its terminals, its sort and where it is drawn.</summary>
internal sealed class NotedTable
{
    private const double Size = Cells.SmallSize;
    private const double Gap = 1;
    private const double RowHeight = Size * 1.15;
    private readonly Figure figure;
    private readonly IReadOnlyList<(string Name, string Sort, Place Place)> rows;
    private readonly double first;
    private readonly double second;

    public NotedTable(Figure figure, IReadOnlyList<(string Name, string Sort, Place Place)> rows)
    {
        (this.figure, this.rows) = (figure, rows);
        first = rows.Max(r => LengthOf(r.Name)) + Gap;
        second = first + rows.Max(r => LengthOf(r.Sort)) + Gap;
        Width = second + rows.Max(r => LengthOf(SheetIndex.Longest(r.Place)));
        Height = (rows.Count * RowHeight) + 0.6;
    }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Its upper left corner there; normally closed contacts are underlined.</summary>
    public IEnumerable<Noted> At(double x, double top)
    {
        var mentions = new List<Mention>();
        for (var i = 0; i < rows.Count; i++)
        {
            var y = top + (i * RowHeight) + (Size * 0.8);
            var (name, sort, place) = rows[i];
            mentions.Add(new(new(new(x, y), name, Size), [], sort == "NC"));
            if (sort.Length > 0)
                mentions.Add(new(new(new(x + first, y), sort, Size), []));
            mentions.Add(new(new(new(x + second, y), "", Size), [place]));
        }
        yield return new(figure, mentions);
    }

    private static double LengthOf(string text) => LetterWidths.Of(text, Size, false);
}
