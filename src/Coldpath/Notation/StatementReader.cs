using Antlr4.Runtime;
using Coldpath.Findings;
using Coldpath.Notation.Building;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Reads statement after statement: each line by the rule that its first words call for.</summary>
internal sealed class StatementReader(LineReader reader, LineQueue lines)
{
    public List<StatementSyntax> Read()
    {
        var statements = new List<StatementSyntax>();
        while (!lines.AtEnd && !reader.IsFull)
            statements.Add(
                Form(lines.Peek) == "kind" ? new KindReader(reader, lines).Read() : Statement(lines.Take())
            );
        if (!lines.AtEnd)
            statements.Add(Rest());
        return statements;
    }

    /// <summary>What is left when there are too many findings.</summary>
    private BrokenSyntax Rest()
    {
        var first = lines.Peek;
        while (!lines.AtEnd)
            reader.LeaveOut(lines.Take());
        return new BrokenSyntax([], lines.SpanFrom(first));
    }

    private StatementSyntax Statement(Line line) =>
        reader.Read(line, Statement) ?? new BrokenSyntax(reader.Words(line), reader.Span(line));

    private StatementSyntax? Statement(Line line, LineReport report)
    {
        StatementSyntax? Made<T>(Func<Grammar, T> rule, Func<SyntaxBuilder, T, StatementSyntax?> build)
            where T : ParserRuleContext => reader.Make(line, report, rule, build);

        return Form(line) switch
        {
            "panel" or "site" => Made(g => g.panelName(), (b, l) => b.PanelName(l)),
            "include" => Made(g => g.include(), (b, l) => b.Include(l)),
            "drawing" => Made(g => g.drawing(), (b, l) => b.Drawing(l)),
            "rules" => Made(g => g.rules(), (b, l) => b.Rules(l)),
            "system" => Made(g => g.system(), (b, _) => b.System(line)),
            "rung" => Made(g => g.rung(), (b, l) => b.Rung(l)),
            "wire" => Made(g => g.wire(), (b, l) => b.Wire(l)),
            "untraced" => Made(g => g.untraced(), (b, l) => b.Untraced(l)),
            "seen" => Made(g => g.seen(), (b, l) => b.Seen(l)),
            "from" => Made(g => g.fromDrawing(), (b, l) => b.FromDrawing(l)),
            "never" => Made(g => g.never(), (b, l) => b.Never(l)),
            "dead" => Made(g => g.dead(), (b, l) => b.Dead(l)),
            "stops" => Made(g => g.stops(), (b, l) => b.Stops(l)),
            "can" => Made(g => g.can(), (b, l) => b.Can(l)),
            "waive" => Made(g => g.waive(), (b, l) => b.Waive(l)),
            "end" or "else" => Stray(line, report),
            "->" => Made(g => g.chain(), (b, l) => b.Chain(l)),
            _ => Made(g => g.declaration(), (b, _) => b.Declaration(line)),
        };
    }

    private StatementSyntax? Stray(Line line, LineReport report)
    {
        report.Report(Wording.StrayEnd(reader.Span(line.Lexemes[0]), reader.Text(line.Lexemes[0])));
        return null;
    }

    /// <summary>The word that says what the line is; "->" for a chain, "" for a declaration.</summary>
    private string Form(Line line)
    {
        var lexemes = line.Lexemes;
        var word = reader.Text(lexemes[0]);
        var isTag = lexemes.Count > 1 && LineWords.FollowsTag(lexemes[1].Type);
        if (LineWords.BeginsStatement(word) && !isTag)
            return word;
        if (lexemes.Count == 1 && word is "end" or "else")
            return word;
        return lexemes[0].Type == PanelLexer.LPAREN || lexemes.Any(BelongsToChain) ? "->" : "";
    }

    private static bool BelongsToChain(Lexeme lexeme) =>
        lexeme.Type is PanelLexer.ARROW or PanelLexer.TERMINAL or PanelLexer.LBRACKET;
}
