using System.Collections.Frozen;
using Coldpath.Notation.Generated;

namespace Coldpath.Notation;

/// <summary>The words that lines begin with.</summary>
public static class LineWords
{
    /// <summary>Begin a statement; a kind's name cannot begin with one.</summary>
    public static IReadOnlyCollection<string> Statement => Statements;

    /// <summary>Begin a line inside a kind.</summary>
    public static IReadOnlyCollection<string> Kind => Kinds;

    private static readonly FrozenSet<string> Statements = Set(
        "panel site include drawing rules system rung wire untraced seen from never dead stops can waive kind"
    );

    private static readonly FrozenSet<string> Kinds = Set(
        "means letter symbol like takes flag let if else end for bar line load conductor contact semiconductor thermal "
            + "series diode fault coil family variable positions failure state source converter winding coupling mode "
            + "use isolates protects opens constraint pair"
    );

    internal static bool BeginsStatement(string word) => Statements.Contains(word);

    internal static bool BeginsKindLine(string word) => Kinds.Contains(word);

    /// <summary>Whether a token can only stand behind a tag, so that the word before it is one.</summary>
    internal static bool FollowsTag(int type) =>
        type
            is PanelLexer.ARROW
                or PanelLexer.TERMINAL
                or PanelLexer.LBRACKET
                or PanelLexer.RPAREN
                or PanelLexer.RBRACKET
                or PanelLexer.BAR
                or PanelLexer.COMMA;

    private static FrozenSet<string> Set(string words) =>
        words.Split(' ').ToFrozenSet(StringComparer.Ordinal);
}
