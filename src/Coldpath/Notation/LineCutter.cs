using Coldpath.Findings;
using Coldpath.Notation.Generated;

namespace Coldpath.Notation;

/// <summary>
/// Cuts a file into lines. A bracket that is never closed does not swallow the rest of the file: only brackets that
/// find their partner before the next line that clearly begins anew hold a line open.
/// </summary>
internal sealed class LineCutter(Reading reading, Lexemes lexemes)
{
    public IEnumerable<Line> Cut()
    {
        PairBrackets();
        var first = 0;
        var depth = 0;
        for (var i = 0; i < lexemes.Count; i++)
        {
            var lexeme = lexemes[i];
            if (i > first && lexeme.StartsRow && depth == 0 && !GoesOn(i))
            {
                yield return Make(first, i);
                first = i;
            }
            if (lexeme.IsPaired)
                depth += lexeme.Opens ? 1 : -1;
        }
        if (lexemes.Count > 0)
            yield return Make(first, lexemes.Count);
    }

    private void PairBrackets()
    {
        var open = new List<int>();
        for (var i = 0; i < lexemes.Count; i++)
        {
            if (lexemes[i].StartsRow && BeginsAnew(i))
                open.Clear();
            if (lexemes[i].Opens)
                open.Add(i);
            else if (lexemes[i].Closes && open.Count > 0)
                Pair(open, i);
        }
    }

    /// <summary>One opener of the other sort on the way to the partner stays alone.</summary>
    private void Pair(List<int> open, int close)
    {
        var sort = lexemes[close].Type == PanelLexer.RPAREN ? PanelLexer.LPAREN : PanelLexer.LBRACKET;
        var at = open.Count - 1;
        if (lexemes[open[at]].Type != sort && at > 0)
            at--;
        if (lexemes[open[at]].Type != sort)
            return;
        lexemes[open[at]] = lexemes[open[at]] with { IsPaired = true };
        lexemes[close] = lexemes[close] with { IsPaired = true };
        open.RemoveRange(at, open.Count - at);
    }

    /// <summary>Behind a comma "seen" and "from the drawing" are ratings, and "from first" is said of a coupling.</summary>
    private bool GoesOn(int next) =>
        !lexemes[next].AfterGap
        && lexemes[next - 1].Type switch
        {
            PanelLexer.COMMA => !BeginsAnew(next) || reading.Text(lexemes[next]) is "seen" or "from",
            PanelLexer.ARROW or PanelLexer.BAR => !BeginsAnew(next),
            _ => false,
        };

    /// <summary>A word that begins statements, with something behind it that it cannot have as a tag.</summary>
    private bool BeginsAnew(int i) =>
        LineWords.BeginsStatement(reading.Text(lexemes[i]))
        && i + 1 < lexemes.Count
        && !lexemes[i + 1].StartsRow
        && !LineWords.FollowsTag(lexemes[i + 1].Type);

    private Line Make(int first, int end)
    {
        var line = lexemes[first..end];
        return new Line(line, Mistake(line));
    }

    private Finding? Mistake(Lexemes line)
    {
        if (line.Count > Limits.LineWords)
            return Wording.LineTooLong(reading.Span(line[0]));
        var depth = 0;
        for (var i = 0; i < line.Count; i++)
        {
            var lexeme = line[i];
            depth +=
                lexeme.Opens ? 1
                : lexeme.Closes ? -1
                : 0;
            if (depth > Limits.Nesting)
                return Wording.NestedTooDeep(reading.Span(lexeme));
            if (Mistake(lexeme) is { } mistake)
                return mistake;
        }
        return null;
    }

    private Finding? Mistake(Lexeme lexeme)
    {
        var span = reading.Span(lexeme);
        return lexeme.Type switch
        {
            PanelLexer.UNCLOSED => Wording.UnclosedText(span),
            PanelLexer.INVISIBLE => Wording.InvisibleCharacter(span),
            PanelLexer.OTHER => Wording.StrayCharacter(span),
            PanelLexer.TEXT => Invisible.In(reading.Source.Text, lexeme.Start, lexeme.End) is { } at
                ? Wording.InvisibleCharacter(reading.Span(at, at + 1))
                : null,
            _ when lexeme.Opens && !lexeme.IsPaired => Wording.NeverClosed(span),
            _ when lexeme.Closes && !lexeme.IsPaired => Wording.NeverOpened(span),
            _ => lexeme.End - lexeme.Start > Limits.NameLength ? Wording.NameTooLong(span) : null,
        };
    }
}
