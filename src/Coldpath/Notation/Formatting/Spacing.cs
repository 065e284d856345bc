using System.Text;
using Coldpath.Notation.Generated;

namespace Coldpath.Notation.Formatting;

/// <summary>Writes lexemes with the canonical spaces between them.</summary>
/// <param name="inKind">In a kind a square bracket stands apart; elsewhere it clings to the name before it.</param>
/// <param name="inChain">In a chain round brackets have spaces inside.</param>
internal sealed class Spacing(Reading reading, Rewrites rewrites, bool inKind, bool inChain)
{
    public string Write(Lexemes lexemes)
    {
        var text = new StringBuilder();
        var inBrackets = false;
        for (var i = 0; i < lexemes.Count; i++)
        {
            if (i > 0 && SpaceBetween(lexemes[i - 1], lexemes[i], inBrackets))
                text.Append(' ');
            text.Append(rewrites.Words.GetValueOrDefault(lexemes[i].Start) ?? reading.Text(lexemes[i]));
            text.Append(rewrites.Behind.GetValueOrDefault(lexemes[i].End));
            inBrackets =
                lexemes[i].Type == PanelLexer.LBRACKET
                || inBrackets && lexemes[i].Type != PanelLexer.RBRACKET;
        }
        return text.ToString();
    }

    private bool SpaceBetween(Lexeme left, Lexeme right, bool inBrackets) =>
        (left.Type, right.Type) switch
        {
            (_, PanelLexer.COMMA or PanelLexer.COLON or PanelLexer.TERMINAL or PanelLexer.RBRACKET) => false,
            (PanelLexer.LBRACKET, _) => false,
            (_, PanelLexer.LBRACKET) => inKind,
            (PanelLexer.LPAREN, _) or (_, PanelLexer.RPAREN) => inChain,
            (PanelLexer.STAR, _) => !inBrackets,
            // A sign and a number: "angle -120" stays apart from "a - 120".
            (PanelLexer.MINUS, PanelLexer.NUMBER) => left.End < right.Start,
            _ => true,
        };
}
