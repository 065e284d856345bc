using Coldpath.Notation.Generated;

namespace Coldpath.Notation;

/// <summary>
/// Cuts a file into lines. A bracket that is never closed does not swallow the rest of the file: only brackets that
/// find their partner before the next line that clearly begins anew hold a line open.
/// </summary>
internal sealed class LineCutter(Reading reading, Lexeme[] lexemes)
{
    private const int Alone = -1;

    /// <summary>For each bracket the index of its partner, or <see cref="Alone"/>.</summary>
    private readonly int[] partners = new int[lexemes.Length];

    public IEnumerable<Line> Cut()
    {
        MatchBrackets();
        var first = 0;
        var depth = 0;
        for (var i = 0; i < lexemes.Length; i++)
        {
            if (i > first && lexemes[i].StartsRow && depth == 0 && !GoesOn(i))
            {
                yield return Make(first, i);
                first = i;
            }
            depth += Opens(i) && partners[i] != Alone ? 1 : 0;
            depth -= Closes(i) && partners[i] != Alone ? 1 : 0;
        }
        if (lexemes.Length > 0)
            yield return Make(first, lexemes.Length);
    }

    private bool Opens(int i) => lexemes[i].Type is PanelLexer.LPAREN or PanelLexer.LBRACKET;

    private bool Closes(int i) => lexemes[i].Type is PanelLexer.RPAREN or PanelLexer.RBRACKET;

    private void MatchBrackets()
    {
        Array.Fill(partners, Alone);
        var open = new Stack<int>();
        for (var i = 0; i < lexemes.Length; i++)
        {
            if (lexemes[i].StartsRow && BeginsAnew(i))
                open.Clear();
            if (Opens(i))
                open.Push(i);
            else if (Closes(i) && open.Count > 0)
                Match(open, i);
        }
    }

    /// <summary>An opener of the other sort on the way to the partner stays alone.</summary>
    private void Match(Stack<int> open, int close)
    {
        var sort = lexemes[close].Type == PanelLexer.RPAREN ? PanelLexer.LPAREN : PanelLexer.LBRACKET;
        if (lexemes[open.Peek()].Type != sort && (open.Count < 2 || lexemes[open.ElementAt(1)].Type != sort))
            return;
        if (lexemes[open.Peek()].Type != sort)
            open.Pop();
        var opener = open.Pop();
        (partners[opener], partners[close]) = (close, opener);
    }

    /// <summary>Behind a comma "seen" and "from the drawing" are ratings, so there nothing begins anew.</summary>
    private bool GoesOn(int next) =>
        !lexemes[next].AfterGap
        && lexemes[next - 1].Type switch
        {
            PanelLexer.COMMA => true,
            PanelLexer.ARROW or PanelLexer.BAR => !BeginsAnew(next),
            _ => false,
        };

    /// <summary>A word that begins statements, with something behind it that it cannot have as a tag.</summary>
    private bool BeginsAnew(int i) =>
        LineWords.BeginsStatement(reading.Text(lexemes[i]))
        && i + 1 < lexemes.Length
        && !lexemes[i + 1].StartsRow
        && !LineWords.FollowsTag(lexemes[i + 1].Type);

    private Line Make(int first, int end) =>
        new(new ArraySegment<Lexeme>(lexemes, first, end - first), LineMistake(first, end));

    private Findings.Finding? LineMistake(int first, int end)
    {
        if (end - first > Limits.LineWords)
            return Wording.LineTooLong(reading.Span(lexemes[first]));
        var depth = 0;
        for (var i = first; i < end; i++)
        {
            depth += Opens(i) ? 1 : 0;
            depth -= Closes(i) ? 1 : 0;
            if (depth > Limits.Nesting)
                return Wording.NestedTooDeep(reading.Span(lexemes[i]));
            if (LexemeMistake(i) is { } mistake)
                return mistake;
        }
        return null;
    }

    private Findings.Finding? LexemeMistake(int i)
    {
        var (lexeme, span) = (lexemes[i], reading.Span(lexemes[i]));
        return lexeme.Type switch
        {
            PanelLexer.UNCLOSED => Wording.UnclosedText(span),
            PanelLexer.INVISIBLE => Wording.InvisibleCharacter(span),
            PanelLexer.OTHER => Wording.StrayCharacter(span),
            PanelLexer.TEXT => Invisible.In(reading.Source.Text, lexeme.Start, lexeme.End) is { } at
                ? Wording.InvisibleCharacter(reading.Span(at, at + 1))
                : null,
            PanelLexer.LPAREN or PanelLexer.LBRACKET when partners[i] == Alone => Wording.NeverClosed(span),
            PanelLexer.RPAREN or PanelLexer.RBRACKET when partners[i] == Alone => Wording.NeverOpened(span),
            _ => lexeme.End - lexeme.Start > Limits.NameLength ? Wording.NameTooLong(span) : null,
        };
    }
}
