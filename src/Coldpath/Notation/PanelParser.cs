using System.Text;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation;

/// <summary>Reads the panel language.</summary>
public static class PanelParser
{
    /// <summary>
    /// Always returns a tree. A line that cannot be read becomes one <see cref="BrokenSyntax"/> (or
    /// <see cref="BrokenLineSyntax"/>) and one finding; all others are read as if it were not there.
    /// </summary>
    public static ParseResult Parse(SourceText source)
    {
        var reading = new Reading(source);
        var complaints = new Complaints();
        if (Encoding.UTF8.GetByteCount(source.Text) > Limits.FileBytes)
        {
            complaints.Add(Wording.FileTooLarge(reading.Span(0, 0)));
            return Result(reading, [], [], [], complaints);
        }
        var text = new LexemeReader(reading, complaints);
        var reader = new LineReader(reading, complaints);
        using var lines = new LineQueue(reading, new LineCutter(reading, text.Read()).Cut());
        var statements = new StatementReader(reader, lines).Read();
        return Result(reading, statements, text.Comments, reader.BrokenWords, complaints);
    }

    private static ParseResult Result(
        Reading reading,
        IReadOnlyList<StatementSyntax> statements,
        IReadOnlyList<CommentSyntax> comments,
        HashSet<string> brokenWords,
        Complaints complaints
    )
    {
        var findings = complaints.InOrder();
        var panel = new PanelSyntax(statements, comments, reading.Span(0, reading.Source.Text.Length))
        {
            BrokenWords = brokenWords,
            IsWhole = findings.Count == 0,
        };
        return new ParseResult(panel, findings);
    }
}
