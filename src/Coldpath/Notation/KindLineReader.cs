using Antlr4.Runtime;
using Coldpath.Findings;
using Coldpath.Notation.Building;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Reads a line of a kind that opens no block.</summary>
internal static class KindLineReader
{
    /// <param name="supply">"source" or "converter" inside one; other lines cannot stand there.</param>
    public static KindLineSyntax? Read(LineReader reader, Line line, LineReport report, string? supply)
    {
        KindLineSyntax? Made<T>(Func<Grammar, T> rule, Func<SyntaxBuilder, T, KindLineSyntax> build)
            where T : ParserRuleContext => reader.Make(line, report, rule, build);

        var word = reader.Text(line.Lexemes[0]);
        var form =
            line.Lexemes.Count > 1 && line.Lexemes[1].Type == PanelLexer.ARROW ? "->"
            : word is "line" or "load" && line.Lexemes.Count > 1 && reader.Text(line.Lexemes[1]) == "side"
                ? "side"
            : word;
        if (supply is not null)
            return (form, supply) switch
            {
                ("conductor", _) => Made(g => g.supplyConductor(), (b, l) => b.SupplyConductor(l)),
                ("winding", "converter") => Made(g => g.winding(), (b, l) => b.Winding(l)),
                _ => Refuse(report, Wording.NotInBlock(reader.Span(line.Lexemes[0]), word, supply)),
            };
        return form switch
        {
            "->" => Made(g => g.move(), (b, l) => b.Move(l)),
            "means" => Made(g => g.means(), (b, l) => b.Means(l)),
            "letter" => Made(g => g.letter(), (b, l) => b.Letter(l)),
            "symbol" => Made(g => g.symbol(), (b, l) => b.Symbol(l)),
            "like" => Made(g => g.like(), (b, l) => b.Like(l)),
            "takes" => Made(g => g.takes(), (b, l) => b.Takes(l, line)),
            "flag" => Made(g => g.flag(), (b, l) => b.Flag(l)),
            "let" => Made(g => g.let(), (b, l) => b.Let(l)),
            "bar" => Made(g => g.bar(), (b, l) => b.Bar(l)),
            "side" => Made(g => g.side(), (b, l) => b.Side(l)),
            "coil" => Made(g => g.coil(), (b, l) => b.Coil(l)),
            "family" => Made(g => g.family(), (b, l) => b.Family(l)),
            "variable" => Made(g => g.variable(), (b, l) => b.Variable(l)),
            "positions" => Made(g => g.positions(), (b, l) => b.Positions(l)),
            "failure" => Made(g => g.failure(), (b, l) => b.Failure(l)),
            "state" => Made(g => g.state(), (b, l) => b.State(l)),
            "coupling" => Made(g => g.coupling(), (b, l) => b.Coupling(l)),
            "mode" => Made(g => g.loadMode(), (b, l) => b.Mode(l)),
            "use" => Made(g => g.use(), (b, l) => b.Use(l)),
            "isolates" => Made(g => g.isolates(), (b, l) => b.Isolates(l)),
            "protects" => Made(g => g.protects(), (b, l) => b.Protects(l)),
            "opens" => Made(g => g.opensOnShort(), (b, l) => b.OpensOnShort(l)),
            "constraint" => Made(g => g.constraint(), (b, l) => b.Constraint(l)),
            "pair" => Made(g => g.devicePair(), (b, l) => b.DevicePair(l)),
            "winding" => Refuse(report, Wording.OutsideConverter(reader.Span(line.Lexemes[0]))),
            "else" => Refuse(report, Wording.StrayEnd(reader.Span(line.Lexemes[0]), word)),
            _ when LineWords.BeginsKindLine(form) => Made(g => g.element(), (b, l) => b.Element(l)),
            _ => Refuse(
                report,
                Wording.NotAKindLine(
                    reader.Span(line.Lexemes[0]),
                    word,
                    SpellChecker.Hint(word, LineWords.Kind)
                )
            ),
        };
    }

    /// <summary>"open -> closed by operator": no chain has a "by".</summary>
    public static bool IsMove(LineReader reader, Line line) =>
        line.Lexemes.Count > 3
        && line.Lexemes[1].Type == PanelLexer.ARROW
        && reader.Text(line.Lexemes[3]) == "by";

    private static KindLineSyntax? Refuse(LineReport report, Finding mistake)
    {
        report.Report(mistake);
        return null;
    }
}
