using Antlr4.Runtime;
using Coldpath.Findings;
using Coldpath.Notation.Building;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Reads single lines, and keeps what went wrong: one finding a line, and the words of broken lines.</summary>
internal sealed class LineReader(Reading reading, Complaints complaints)
{
    private readonly LineParser parser = new(reading);

    /// <summary>Words of every line that could not be read.</summary>
    public HashSet<string> BrokenWords { get; } = new(StringComparer.Ordinal);

    public bool IsFull => complaints.IsFull;

    public string Text(Lexeme lexeme) => reading.Text(lexeme);

    public Span Span(Lexeme lexeme) => reading.Span(lexeme);

    public Span Span(Line line) => reading.Span(line.Start, line.End);

    public WordSyntax[] Words(Line line) => reading.Words(line.Lexemes);

    public void Complain(Finding finding) => complaints.Add(finding);

    /// <summary>What <paramref name="read"/> makes of the line; null, with a complaint, if it holds a mistake.</summary>
    public T? Read<T>(Line line, Func<Line, LineReport, T?> read)
        where T : class
    {
        var report = new LineReport();
        if (line.Mistake is { } mistake)
            report.Report(mistake);
        var made = report.Mistake is null && !complaints.IsFull ? read(line, report) : null;
        if (report.Mistake is { } found)
            complaints.Add(found);
        if (made is not null && report.Mistake is null)
            return made;
        LeaveOut(line);
        return null;
    }

    public void LeaveOut(Line line)
    {
        foreach (var word in reading.Words(line.Lexemes))
            BrokenWords.Add(word.Text);
    }

    /// <summary>Syntax made of the line as a rule of the grammar sees it.</summary>
    public TMade? Make<TContext, TMade>(
        Line line,
        LineReport report,
        Func<Grammar, TContext> rule,
        Func<SyntaxBuilder, TContext, TMade?> build
    )
        where TContext : ParserRuleContext
        where TMade : class =>
        parser.Parse(line, rule, report) is { } context
            ? build(new SyntaxBuilder(reading, report), context)
            : null;
}
