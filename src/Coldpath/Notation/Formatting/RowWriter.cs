using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Formatting;

/// <summary>Turns lines and comments into rows, in their order.</summary>
internal sealed class RowWriter(
    Reading reading,
    Rewrites rewrites,
    IReadOnlyDictionary<int, SyntaxNode> nodes,
    IReadOnlyList<CommentSyntax> comments
)
{
    private const int Step = 2;
    private const int Continuation = 4;

    /// <summary>A line of several rows is joined when it is no longer than this.</summary>
    private const int JoinedWidth = 110;

    private readonly List<Row> rows = [];
    private int nextComment;
    private int depth;
    private int lastEnd;

    public IReadOnlyList<Row> Write(IEnumerable<Line> lines)
    {
        foreach (var line in lines)
        {
            WriteComments(before: line.Start, Indent(line));
            WriteLine(line);
        }
        WriteComments(before: int.MaxValue, 0);
        return rows;
    }

    /// <summary>Comments that have a row to themselves.</summary>
    private void WriteComments(int before, int indent)
    {
        for (; nextComment < comments.Count && comments[nextComment].Span.Start < before; nextComment++)
        {
            var comment = comments[nextComment];
            rows.Add(new Row(null, indent, [], comment.Text, AfterGap(comment.Span.Start)));
            lastEnd = comment.Span.End;
        }
    }

    /// <summary>Of a comment in front of a line: as the line, but inside the block that an "end" closes.</summary>
    private int Indent(Line line) =>
        depth * Step + (nodes.TryGetValue(line.Start, out var node) ? LineLayout.Of(node, line).Indent : 0);

    private void WriteLine(Line line)
    {
        var node = nodes.GetValueOrDefault(line.Start);
        var inKind = depth > 0;
        var ends = node is null;
        var isElse = ends && reading.Text(line.Lexemes[0]) == "else";
        depth -= ends ? 1 : 0;
        var layout = LineLayout.Of(node, line);
        var spacing = new Spacing(reading, rewrites, inKind, node is ChainSyntax);
        var indent = depth * Step + layout.Indent;
        if (IsJoined(line, spacing, indent))
            rows.Add(
                new Row(layout.Family, indent, Cells(line, layout, spacing), null, AfterGap(line.Start))
            );
        else
            WriteRows(line, spacing, indent);
        lastEnd = line.End;
        TakeTrailingComment(line.End);
        depth += LineNodes.IsBlock(node) || isElse ? 1 : 0;
    }

    /// <summary>A line of one row, or one that fits into one and has no comments inside.</summary>
    private bool IsJoined(Line line, Spacing spacing, int indent) =>
        !line.Lexemes[1..].Any(l => l.StartsRow)
        || (!HasCommentBefore(line.End) && indent + spacing.Write(line.Lexemes).Length <= JoinedWidth);

    private bool HasCommentBefore(int end) =>
        nextComment < comments.Count && comments[nextComment].Span.Start < end;

    private static List<string> Cells(Line line, LineLayout layout, Spacing spacing)
    {
        var cells = new List<string>();
        var first = 0;
        foreach (var cut in layout.Cuts.Append(int.MaxValue))
        {
            var end = first;
            while (end < line.Lexemes.Count && line.Lexemes[end].Start < cut)
                end++;
            cells.Add(spacing.Write(line.Lexemes[first..end]));
            first = end;
        }
        return cells;
    }

    /// <summary>Keeps the rows of a line, and the comments between them.</summary>
    private void WriteRows(Line line, Spacing spacing, int indent)
    {
        var first = 0;
        for (var i = 1; i <= line.Lexemes.Count; i++)
        {
            if (i < line.Lexemes.Count && !line.Lexemes[i].StartsRow)
                continue;
            if (first > 0)
                WriteComments(line.Lexemes[first].Start, indent + Continuation);
            var cells = new[] { spacing.Write(line.Lexemes[first..i]) };
            var gap = first == 0 && AfterGap(line.Start);
            rows.Add(new Row(null, first == 0 ? indent : indent + Continuation, cells, null, gap));
            lastEnd = line.Lexemes[i - 1].End;
            if (i < line.Lexemes.Count)
                TakeTrailingComment(lastEnd);
            first = i;
        }
    }

    private void TakeTrailingComment(int end)
    {
        if (nextComment == comments.Count || comments[nextComment] is not { OwnLine: false } comment)
            return;
        if (
            comment.Span.Start < end
            || reading.Source.Text.AsSpan(end, comment.Span.Start - end).Contains('\n')
        )
            return;
        rows[^1] = rows[^1] with { Comment = comment.Text };
        nextComment++;
        lastEnd = comment.Span.End;
    }

    private bool AfterGap(int start) => reading.Source.Text.AsSpan(lastEnd, start - lastEnd).Count('\n') > 1;
}
