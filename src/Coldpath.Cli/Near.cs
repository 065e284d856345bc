using Coldpath.Findings;

namespace Coldpath.Cli;

/// <summary>Says that there is no such thing, and what may have been meant.</summary>
internal static class Near
{
    public static string Unknown(string what, string word, IEnumerable<string> known) =>
        SpellChecker.Hint(word, known) is { } hint
            ? $"there is no {what} '{word}'; {hint}"
            : $"there is no {what} '{word}'";
}
