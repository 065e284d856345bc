using System.Text;

namespace Coldpath.Notation.Formatting;

/// <summary>
/// Aligns rows: cells among neighbours of one family, comments among all rows between two blank ones. A row that is
/// a comment alone does not part neighbours.
/// </summary>
internal static class Columns
{
    private const int SpaceBeforeComment = 2;

    /// <summary>"contact", "failure", "thermal": a kind's lines need not move when one is added.</summary>
    private const int KindWordWidth = 7;

    public static string Align(IReadOnlyList<Row> rows)
    {
        var texts = new string[rows.Count];
        foreach (
            var run in Runs(
                rows,
                (a, b) => a.Family == b.Family && a.Family is not null && a.Indent == b.Indent
            )
        )
            AlignCells(rows, run, texts);
        foreach (var run in Runs(rows, (_, _) => true))
            AlignComments(rows, run, texts);
        var text = new StringBuilder();
        for (var i = 0; i < rows.Count; i++)
            text.Append(rows[i].AfterGap && i > 0 ? "\n" : "").Append(texts[i]).Append('\n');
        return text.ToString();
    }

    /// <summary>Stretches of rows without a gap, in which each row that has cells agrees with the one before it.</summary>
    private static IEnumerable<(int First, int End)> Runs(IReadOnlyList<Row> rows, Func<Row, Row, bool> agree)
    {
        var first = 0;
        Row? last = null;
        for (var i = 0; i < rows.Count; i++)
        {
            var apart = rows[i].Cells.Count > 0 && last is not null && !agree(last, rows[i]);
            if (i > first && (rows[i].AfterGap || apart))
            {
                yield return (first, i);
                (first, last) = (i, null);
            }
            if (rows[i].Cells.Count > 0)
                last = rows[i];
        }
        if (rows.Count > first)
            yield return (first, rows.Count);
    }

    private static void AlignCells(IReadOnlyList<Row> rows, (int First, int End) run, string[] texts)
    {
        var widths = new List<int>();
        for (var i = run.First; i < run.End; i++)
        for (var c = 0; c < rows[i].Cells.Count - 1; c++)
            if (c == widths.Count)
                widths.Add(rows[i].Cells[c].Length);
            else
                widths[c] = Math.Max(widths[c], rows[i].Cells[c].Length);
        for (var i = run.First; i < run.End; i++)
            texts[i] = Line(rows[i], widths);
    }

    private static string Line(Row row, List<int> widths)
    {
        var text = new StringBuilder().Append(' ', row.Indent);
        for (var c = 0; c < row.Cells.Count - 1; c++)
            text.Append(
                    row.Cells[c]
                        .PadRight(c == 0 && row.Family == LineLayout.KindLines ? KindWordWidth : widths[c])
                )
                .Append(' ', c == 0 ? Gap(row) : 1);
        return text.Append(row.Cells.Count > 0 ? row.Cells[^1] : row.Comment).ToString();
    }

    /// <summary>A kind may have several words, and a rung's first node may be a number: a wider gap parts them.</summary>
    private static int Gap(Row row) => row.Family is LineLayout.Declarations or LineLayout.Rungs ? 2 : 1;

    private static void AlignComments(IReadOnlyList<Row> rows, (int First, int End) run, string[] texts)
    {
        var commented = Enumerable
            .Range(run.First, run.End - run.First)
            .Where(i => rows[i] is { Comment: not null, Cells.Count: > 0 })
            .ToList();
        var column = commented.Count == 0 ? 0 : commented.Max(i => texts[i].Length) + SpaceBeforeComment;
        foreach (var i in commented)
            texts[i] = texts[i].PadRight(column) + rows[i].Comment;
    }
}
