using System.Text.RegularExpressions;

namespace Coldpath.Tests.Panels;

/// <summary>
/// Exchanges the tags of a panel, each for another of equal length, so that places in the text stay and every order
/// by name changes.
/// </summary>
internal sealed class Renaming
{
    private readonly Dictionary<string, string> renamed = new(StringComparer.Ordinal);
    private readonly Regex tag;

    public Renaming(IReadOnlyList<string> tags)
    {
        foreach (var alike in tags.GroupBy(t => t.Length))
        foreach (var (old, other) in alike.Zip(alike.Reverse()))
            renamed.Add(old, other);
        // Terminals stand behind a colon, a point, a stroke or a dash; "X2 earthed" is a flag.
        tag = new Regex($@"(?<![\w:./-])({string.Join('|', tags.Select(Regex.Escape))})(?![\w/]| earthed)");
    }

    /// <summary>Names in brackets are terminals.</summary>
    public string OfPanel(string text) =>
        Regex.Replace(text, @"\[[^\]\n]*\]|[^\[]+", m => IsBracket(m) ? m.Value : Of(m.Value));

    /// <summary>Conductors bear their terminals' names.</summary>
    public string OfNetlist(string json) =>
        Regex.Replace(
            json,
            @"""name"":""[^""]*"",""net""|(?:(?!""name"":""[^""]*"",""net"").)+",
            m => m.Value.EndsWith(@"""net""", StringComparison.Ordinal) ? m.Value : Of(m.Value)
        );

    private static bool IsBracket(Match match) => match.Value.StartsWith('[');

    private string Of(string text) => tag.Replace(text, m => renamed[m.Value]);
}
