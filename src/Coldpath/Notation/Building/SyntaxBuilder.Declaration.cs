using Coldpath.Findings;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    /// <summary>Kind, tags and ratings; null and a mistake when no tag is to be found.</summary>
    public StatementSyntax? Declaration(Line line)
    {
        var lexemes = line.Lexemes;
        var leading = LeadingWords(lexemes);
        var tag = FirstTag(lexemes, leading);
        if (tag == 0)
        {
            var kind = reading.Text(lexemes[0]);
            report.Report(
                reading.Word(lexemes[0]).LooksLikeTag
                    ? Wording.MissingKind(reading.Span(lexemes[0]), kind)
                    : Wording.MissingTag(
                        reading.Span(lexemes[0]),
                        kind,
                        SpellChecker.Hint(kind, LineWords.Statement)
                    )
            );
            return null;
        }
        var behind = tag + 1;
        while (behind + 1 < lexemes.Count && IsAnd(lexemes[behind]) && lexemes[behind + 1].IsWord)
            behind += 2;
        var tags = Enumerable
            .Range(0, (behind - tag + 1) / 2)
            .Select(n => reading.Word(lexemes[tag + 2 * n]));
        return new DeclarationSyntax(
            lexemes[..tag].Select(reading.Word).ToArray(),
            tags.ToArray(),
            Atoms(lexemes[behind..]),
            reading.Span(line.Start, line.End)
        );
    }

    /// <summary>How many words stand in front before anything that can only be a rating.</summary>
    private int LeadingWords(ArraySegment<Lexeme> lexemes)
    {
        var count = 0;
        while (count < lexemes.Count && lexemes[count].IsWord && !BeginsQuantity(lexemes, count))
            count++;
        return count;
    }

    private bool BeginsQuantity(ArraySegment<Lexeme> lexemes, int i)
    {
        var at = i;
        return lexemes[i].Type == PanelLexer.NUMBER || Quantity(lexemes, ref at) is not null;
    }

    /// <summary>0 when there is none.</summary>
    private int FirstTag(ArraySegment<Lexeme> lexemes, int leading)
    {
        for (var i = 0; i < leading; i++)
            if (reading.Word(lexemes[i]).LooksLikeTag)
                return i;
        var last = leading - 1;
        while (last > 2 && IsAnd(lexemes[last - 1]))
            last -= 2;
        return Math.Max(last, 0);
    }

    private bool IsAnd(Lexeme lexeme) => lexeme.IsWord && reading.Text(lexeme) == "and";
}
