using Antlr4.Runtime;
using Coldpath.Findings;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation;

/// <summary>Takes a source apart into lexemes and comments; line ends show in the lexemes' marks only.</summary>
internal sealed class LexemeReader(Reading reading, Complaints complaints)
{
    private Lexeme[] lexemes = new Lexeme[256];
    private int count;
    private readonly List<CommentSyntax> comments = [];
    private bool rowIsEmpty = true;
    private bool rowHasComment;
    private bool afterGap;

    public IReadOnlyList<CommentSyntax> Comments => comments;

    public Lexemes Read()
    {
        var lexer = new PanelLexer(new Letters(reading.Source.Text), TextWriter.Null, TextWriter.Null);
        lexer.RemoveErrorListeners();
        lexer.TokenFactory = new OneToken();
        for (var token = lexer.NextToken(); token.Type != TokenConstants.EOF; token = lexer.NextToken())
            Take(token.Type, token.StartIndex, token.StopIndex + 1);
        return new Lexemes(lexemes, 0, count);
    }

    private void Take(int type, int start, int end)
    {
        switch (type)
        {
            case PanelLexer.NEWLINE:
                afterGap |= rowIsEmpty && !rowHasComment;
                (rowIsEmpty, rowHasComment) = (true, false);
                break;
            case PanelLexer.COMMENT:
                TakeComment(start, end);
                break;
            case PanelLexer.INVISIBLE when start == 0 && reading.Source.Text[0] == '\uFEFF':
                break;
            default:
                Add(new Lexeme((short)type, rowIsEmpty, afterGap, false, start, end));
                (rowIsEmpty, afterGap) = (false, false);
                break;
        }
    }

    private void Add(Lexeme lexeme)
    {
        if (count == lexemes.Length)
            Grow();
        lexemes[count++] = lexeme;
    }

    private void Grow()
    {
        var more = new Lexeme[2 * count];
        Array.Copy(lexemes, more, count);
        lexemes = more;
    }

    private void TakeComment(int start, int end)
    {
        var text = reading.Source.Text;
        while (end > start && char.IsWhiteSpace(text[end - 1]))
            end--;
        var span = reading.Span(start, end);
        comments.Add(new CommentSyntax(reading.Text(start, end), rowIsEmpty, span));
        rowHasComment = true;
        if (start > 0 && !char.IsWhiteSpace(text[start - 1]) && text[start - 1] != '\uFEFF')
            complaints.Add(Wording.CommentNeedsSpace(reading.Span(start, start + 1)));
        else if (Invisible.In(text, start, end) is { } at)
            complaints.Add(Wording.InvisibleCharacter(reading.Span(at, at + 1)));
    }
}
