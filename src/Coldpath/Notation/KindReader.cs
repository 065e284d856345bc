using Antlr4.Runtime;
using Coldpath.Findings;
using Coldpath.Notation.Building;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Reads one kind with its blocks, down to its <c>end</c> or to where it clearly ends without one.</summary>
internal sealed class KindReader(LineReader reader, LineQueue lines)
{
    private int column;
    private bool isIndented;
    private int depth;

    /// <summary>The block whose lines are a supply's: "source" or "converter"; null outside.</summary>
    private string? supply;

    /// <summary>Why the kind could not be read to its end; null while all is well.</summary>
    private Finding? givenUp;
    private Line header;

    public StatementSyntax Read()
    {
        header = lines.Take();
        column = lines.Column(header);
        isIndented = !lines.AtEnd && lines.Column(lines.Peek) > column;
        var name = Read(header, g => g.kind(), (builder, line) => builder.KindName(line));
        var body = Block();
        if (givenUp is not null)
            reader.Complain(givenUp);
        return name is null
            ? new BrokenSyntax(reader.Words(header), lines.SpanFrom(header))
            : new KindSyntax(name, body, lines.SpanFrom(header));
    }

    /// <summary>The lines up to one that is "end", or "else" if that can end it; that line is left to the caller.</summary>
    private List<KindLineSyntax> Lines(bool toElse)
    {
        var body = new List<KindLineSyntax>();
        while (givenUp is null)
        {
            if (lines.AtEnd || Escapes(lines.Peek))
                givenUp = Wording.NotEnded(reader.Span(header), "kind");
            else if (lines.NextIs("end") || (toElse && lines.NextIs("else")))
                break;
            else
                body.Add(KindLine(lines.Take()));
        }
        return body;
    }

    /// <summary>The lines up to "end", and that.</summary>
    private List<KindLineSyntax> Block()
    {
        var body = Lines(toElse: false);
        if (givenUp is null)
            lines.Take();
        return body;
    }

    /// <summary>
    /// A line that no kind has, and no further in than the kind itself: the next statement. Where the kind's lines
    /// are not indented either, a misspelt one is taken for what it was meant to be.
    /// </summary>
    private bool Escapes(Line line)
    {
        var word = reader.Text(line.Lexemes[0]);
        return !LineWords.BeginsKindLine(word)
            && !KindLineReader.IsMove(reader, line)
            && (
                word == "kind"
                || lines.Column(line) <= column
                    && (isIndented || SpellChecker.Nearest(word, LineWords.Kind) is null)
            );
    }

    private KindLineSyntax KindLine(Line line)
    {
        if (depth == Limits.Nesting)
            return GiveUp(line);
        depth++;
        KindLineSyntax? made = reader.Text(line.Lexemes[0]) switch
        {
            "if" => If(line),
            "for" => ForEachPole(line),
            "source" or "converter" => Supply(line),
            _ => reader.Read(line, (l, report) => KindLineReader.Read(reader, l, report, supply)),
        };
        depth--;
        return made ?? new BrokenLineSyntax(reader.Words(line), lines.SpanFrom(line));
    }

    /// <summary>Skips the rest of a kind that nests too deep.</summary>
    private BrokenLineSyntax GiveUp(Line line)
    {
        givenUp = Wording.NestedTooDeep(reader.Span(line));
        while (!lines.AtEnd && !Escapes(lines.Peek))
            lines.Take();
        return new BrokenLineSyntax(reader.Words(line), reader.Span(line));
    }

    private IfSyntax? If(Line line)
    {
        var condition = Read(line, g => g.ifBlock(), (builder, made) => builder.If(made));
        var then = Lines(toElse: true);
        List<KindLineSyntax> other = [];
        if (givenUp is null && lines.Begins(lines.Take(), "else"))
            other = Block();
        return condition is null ? null : new IfSyntax(condition, then, other, lines.SpanFrom(line));
    }

    private ForEachPoleSyntax? ForEachPole(Line line)
    {
        var head = Read(line, g => g.forEachPole(), (builder, made) => builder.ForEachPole(made));
        var body = Block();
        return head is null ? null : head with { Lines = body, Span = lines.SpanFrom(line) };
    }

    private KindLineSyntax? Supply(Line line)
    {
        var (outer, kind) = (supply, reader.Text(line.Lexemes[0]));
        supply = kind;
        var made = kind == "source" ? Source(line) : (KindLineSyntax?)Converter(line);
        supply = outer;
        return made;
    }

    private SourceSyntax? Source(Line line)
    {
        var head = Read(line, g => g.source(), (builder, made) => builder.Source(made));
        var body = Block();
        return head is null ? null : head with { Lines = body, Span = lines.SpanFrom(line) };
    }

    private ConverterSyntax? Converter(Line line)
    {
        var head = Read(line, g => g.converter(), (builder, made) => builder.Converter(made));
        var body = Block();
        return head is null ? null : head with { Lines = body, Span = lines.SpanFrom(line) };
    }

    private TMade? Read<TContext, TMade>(
        Line line,
        Func<Grammar, TContext> rule,
        Func<SyntaxBuilder, TContext, TMade> build
    )
        where TContext : ParserRuleContext
        where TMade : class => reader.Read(line, (l, report) => reader.Make(l, report, rule, build));
}
