using System.Globalization;
using Coldpath.Findings;

namespace Coldpath.Notation;

/// <summary>Everything the reader says, in one place.</summary>
internal static class Wording
{
    public static Finding Expected(Span at, string what, string? after, string? found, string? hint) =>
        Say(
            "X001",
            "unreadable-line",
            at,
            "expected "
                + what
                + (after is null ? "" : $" after '{after}'")
                + (found is null ? "" : $", found '{found}'"),
            hint
        );

    public static Finding NotExpected(Span at, string found, string? after, string? hint) =>
        Say(
            "X001",
            "unreadable-line",
            at,
            $"did not expect '{found}'" + (after is null ? "" : $" after '{after}'"),
            hint
        );

    public const string SpaceBehindColon = "put a space behind ':'";
    public const string SpacesAroundMinus = "put spaces around '-'";
    public const string NotBeforeName = "'not' stands before the name: 'not K1 closed'";

    public static string DidYouMean(string word, string instead) =>
        $"did you mean '{word}' instead of '{instead}'?";

    public static string CommaBehind(string word) => $"put ',' behind '{word}'";

    public static Finding UnclosedText(Span at) =>
        Say(
            "X002",
            "unclosed-text",
            at,
            "the text in quotes is not closed",
            "put '\"' behind it, on the same row"
        );

    public static Finding NeverClosed(Span at) =>
        Say(
            "X003",
            "unpaired-bracket",
            at,
            $"'{at.Text}' is never closed",
            $"put '{Partner(at.Text)}' where it ends"
        );

    public static Finding NeverOpened(Span at) =>
        Say(
            "X003",
            "unpaired-bracket",
            at,
            $"'{at.Text}' closes nothing",
            $"put '{Partner(at.Text)}' where it begins"
        );

    public static Finding MixedAndOr(Span at) =>
        Say(
            "X004",
            "mixed-and-or",
            at,
            "'and' and 'or' are mixed without brackets",
            "put brackets around the terms that belong together"
        );

    public static Finding EmptyBranch(Span at) =>
        Say("X005", "empty-branch", at, "a branch is empty", "name what is in it, or take the branch out");

    public static Finding NotEnded(Span at, string block) =>
        Say("X006", "missing-end", at, $"'{block}' has no 'end'", "put a line 'end' behind its last line");

    public static Finding StrayEnd(Span at, string word) =>
        Say("X007", "stray-end", at, $"'{word}' ends nothing", null);

    public static Finding NotAKindLine(Span at, string word, string? hint) =>
        Say("X008", "unknown-kind-line", at, $"'{word}' does not begin a line of a kind", hint);

    public static Finding NotInBlock(Span at, string word, string block) =>
        Say("X008", "unknown-kind-line", at, $"'{word}' cannot stand inside '{block}'", null);

    public static Finding OutsideConverter(Span at) =>
        Say("X008", "unknown-kind-line", at, "'winding' stands outside 'converter'", null);

    public static Finding MissingTag(Span at, string after, string? hint) =>
        Say("X009", "missing-tag", at, $"expected a tag after '{after}'", hint);

    public static Finding MissingKind(Span at, string tag) =>
        Say(
            "X009",
            "missing-tag",
            at,
            $"expected the kind of device in front of '{tag}'",
            $"write for example 'contactor {tag}', or '->' if this is a chain"
        );

    public static Finding UnknownUnit(Span at, string unit, string? hint) =>
        Say("X010", "unknown-unit", at, $"'{unit}' is not a known unit", hint);

    public static Finding InvisibleCharacter(Span at) =>
        Say(
            "X011",
            "invisible-character",
            at,
            $"the invisible character U+{(int)at.Source.Text[at.Start]:X4} stands here",
            "take it out"
        );

    public static Finding StrayCharacter(Span at) =>
        Say("X012", "stray-character", at, $"'{at.Text}' means nothing in this language", StrayHint(at.Text));

    public static Finding MissingState(Span at, string name, string? hint) =>
        Say("X013", "missing-state", at, $"expected a state after '{name}'", hint);

    public static Finding CommentNeedsSpace(Span at) =>
        Say(
            "X014",
            "comment-without-space",
            at,
            "a comment begins at the start of a row or after a space",
            "put a space before '#'"
        );

    public static Finding NotWhole(Span at, string number) =>
        Say("X016", "not-a-whole-number", at, $"'{number}' is not a small whole number", null);

    public static Finding OneDefault(Span at) =>
        Say("X015", "unclear-default", at, "a default is one number, one text or one choice", null);

    public static Finding FileTooLarge(Span at) =>
        Say(
            "X020",
            "file-too-large",
            at,
            $"the file is larger than {Limits.FileBytes / 1024 / 1024} MB and was not read",
            null
        );

    public static Finding NestedTooDeep(Span at) =>
        Say("X021", "nested-too-deep", at, $"brackets or blocks nest more than {Limits.Nesting} deep", null);

    public static Finding NameTooLong(Span at) =>
        Say("X022", "name-too-long", at, $"a name is longer than {Limits.NameLength} characters", null);

    public static Finding LineTooLong(Span at) =>
        Say(
            "X023",
            "line-too-long",
            at,
            $"a line has more than {Count(Limits.LineWords)} words and signs",
            null
        );

    public static Finding TooManyFindings(Span at) =>
        Say(
            "X024",
            "too-many-findings",
            at,
            $"{Count(Limits.Findings)} findings are kept and this is the last; what comes after it was not read",
            null
        );

    /// <summary>What a rule of the grammar is called in a message; null when its words speak for themselves.</summary>
    public static string? Phrase(string rule) =>
        rule switch
        {
            "step" => "a device, a node or '('",
            "branch" => "a branch",
            "ref" or "refs" => "a device or a terminal",
            "place" => "a device",
            "terminal" => "a terminal",
            "list" => "terminals in brackets such as [1, 2]",
            "pair" => "two terminals in brackets such as [1 - 2]",
            "condition" or "conditionPart" or "stateTerm" => "a name and its state",
            "guard" or "guardPart" or "guardTerm" => "a condition",
            "sum" or "product" or "factor" or "operand" => "a number or a rating",
            "unit" => "a unit",
            "ratingForm" => "'in' a unit, 'of' choices or 'as' a sort",
            "phrase" or "label" or "name" or "choice" => "a name",
            "atom" => "a rating",
            "defaultValue" => "a value",
            _ => null,
        };

    /// <summary>What a token is called in a message.</summary>
    public static string TokenPhrase(string symbolicName) =>
        symbolicName switch
        {
            "TEXT" => "a text in quotes",
            "NUMBER" => "a number",
            "TERMINAL" => "':' and a terminal",
            "EOF" => "the end of the line",
            _ => "a name",
        };

    public static string? StrayHint(string text) =>
        text switch
        {
            "\u201C" or "\u201D" or "\u201E" or "'" or "\u2019" => "quotes are written '\"'",
            ">" or "\u2192" => "an arrow is written '->'",
            "{" or "}" => "groups are written '( a | b )'",
            ";" => "a line ends without a sign",
            "&" => "write 'and'",
            "\u2013" or "\u2014" => "write '-'",
            _ => null,
        };

    private static string Count(int number) => number.ToString("N0", CultureInfo.InvariantCulture);

    private static string Partner(string bracket) =>
        bracket switch
        {
            "(" => ")",
            "[" => "]",
            ")" => "(",
            _ => "[",
        };

    private static Finding Say(string code, string name, Span at, string message, string? remedy) =>
        new()
        {
            Code = code,
            Name = name,
            Severity = Severity.Defect,
            Message = message,
            Location = at,
            Remedy = remedy,
        };
}
