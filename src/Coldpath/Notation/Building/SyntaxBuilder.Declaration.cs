using Coldpath.Findings;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    /// <summary>Kind, tags and ratings; null and a mistake when a tag is missing.</summary>
    public StatementSyntax? Declaration(Line line)
    {
        var lexemes = line.Lexemes;
        var tag = FirstTag(lexemes, LeadingWords(lexemes));
        if (tag == 0)
            return NoTag(lexemes[0]);
        var tags = new List<WordSyntax> { reading.Word(lexemes[tag]) };
        var behind = tag + 1;
        for (; behind < lexemes.Count && IsAnd(lexemes[behind]); behind += 2)
        {
            if (behind + 1 == lexemes.Count || !IsTag(lexemes, behind + 1))
                return NoTag(lexemes[behind]);
            tags.Add(reading.Word(lexemes[behind + 1]));
        }
        return new DeclarationSyntax(
            reading.Words(lexemes[..tag]),
            tags,
            Atoms(lexemes[behind..]),
            reading.Span(line.Start, line.End)
        );
    }

    private StatementSyntax? NoTag(Lexeme behind)
    {
        var word = reading.Word(behind);
        report.Report(
            word.LooksLikeTag
                ? Wording.MissingKind(word.Span, word.Text)
                : Wording.MissingTag(word.Span, word.Text, SpellChecker.Hint(word.Text, LineWords.Statement))
        );
        return null;
    }

    /// <summary>How many words stand in front before anything that can only be a rating.</summary>
    private int LeadingWords(Lexemes lexemes)
    {
        var count = 0;
        while (count < lexemes.Count && IsTag(lexemes, count))
            count++;
        return count;
    }

    /// <summary>Whether a tag may look like this: a word, but no number and no quantity.</summary>
    private bool IsTag(Lexemes lexemes, int i)
    {
        var at = i;
        return lexemes[i].IsWord && lexemes[i].Type != PanelLexer.NUMBER && Quantity(lexemes, ref at) is null;
    }

    /// <summary>0 when there is none.</summary>
    private int FirstTag(Lexemes lexemes, int leading)
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
