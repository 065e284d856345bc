using Coldpath.Notation.Generated;

namespace Coldpath.Notation;

/// <summary>A word or sign of the text.</summary>
/// <param name="Type">The grammar's token type.</param>
/// <param name="StartsRow">Whether it is the first on its row of the file.</param>
/// <param name="AfterGap">Whether a blank row stands directly or behind comments before it.</param>
/// <param name="IsPaired">Whether it is a bracket that has its partner.</param>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset behind its last.</param>
internal readonly record struct Lexeme(
    short Type,
    bool StartsRow,
    bool AfterGap,
    bool IsPaired,
    int Start,
    int End
)
{
    public bool Opens => Type is PanelLexer.LPAREN or PanelLexer.LBRACKET;

    public bool Closes => Type is PanelLexer.RPAREN or PanelLexer.RBRACKET;

    /// <summary>A name, a number or a word of the language.</summary>
    public bool IsWord => Type is < PanelLexer.ARROW or PanelLexer.WORD or PanelLexer.NUMBER;
}

/// <summary>One line of the language, with its continuations: a stretch of the lexemes of a file.</summary>
/// <param name="Mistake">What makes it unreadable whatever the words say; null when nothing does.</param>
internal readonly record struct Line(Lexemes Lexemes, Findings.Finding? Mistake)
{
    public int Start => Lexemes[0].Start;
    public int End => Lexemes[^1].End;
}
