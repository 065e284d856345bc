namespace Coldpath.Sheets.Reports.Text;

/// <summary>Aligned columns under a heading; the last column is not padded.</summary>
internal sealed class Table(params string[] heading)
{
    private readonly List<(string[] Cells, Style Style)> rows = [];

    public int Count => rows.Count;

    public void Add(Style style, params string[] cells) => rows.Add((cells, style));

    public void WriteTo(Page page)
    {
        var widths = Enumerable
            .Range(0, heading.Length)
            .Select(column =>
                rows.Select(r => Cells.Width(r.Cells[column])).Append(Cells.Width(heading[column])).Max()
            )
            .ToArray();
        page.Line(Format(heading, widths), Style.Strong);
        foreach (var (cells, style) in rows)
            page.Line(Format(cells, widths), style);
    }

    private static string Format(string[] cells, int[] widths) =>
        ("  " + string.Join("  ", cells.Select((cell, i) => Cells.Pad(cell, widths[i])))).TrimEnd();
}
