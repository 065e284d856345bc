using System.Text.RegularExpressions;
using Coldpath.Devices;

namespace Coldpath.Trials;

/// <summary>
/// Makes wrong panels of samples by edits that leave most lines readable: tags, terminals, ratings and kinds changed for
/// others of their sort, lines repeated, left out or put elsewhere.
/// </summary>
internal sealed partial class LineEdits
{
    private readonly List<string[]> samples;
    private readonly Random random;
    private readonly string[] kinds = [.. KindLibrary.Standard.Names.Order(StringComparer.Ordinal)];
    private readonly (Regex Sort, string[] Words)[] sorts;

    public LineEdits(IEnumerable<string> samples, Random random)
    {
        this.samples = [.. samples.Select(s => s.Split('\n'))];
        this.random = random;
        var lines = this.samples.SelectMany(s => s).ToList();
        sorts =
        [
            .. new[] { Tag(), Tag(), Terminal(), Rating(), Contact(), Word() }.Select(sort =>
                (sort, lines.SelectMany(l => sort.Matches(l)).Select(m => m.Value).Distinct().ToArray())
            ),
        ];
    }

    public string Next()
    {
        var lines = samples[random.Next(samples.Count)].ToList();
        for (var edits = random.Next(1, 6); edits > 0 && lines.Count > 0; edits--)
            Edit(lines, random.Next(lines.Count));
        return string.Join('\n', lines);
    }

    private void Edit(List<string> lines, int at)
    {
        switch (random.Next(10))
        {
            case 0:
                lines.RemoveAt(at);
                break;
            case 1:
                lines.Insert(random.Next(lines.Count), lines[at]);
                break;
            case 2:
                var other = random.Next(lines.Count);
                (lines[at], lines[other]) = (lines[other], lines[at]);
                break;
            case 3:
                lines[at] = OfOtherKind(lines[at]);
                break;
            default:
                var (sort, words) = sorts[random.Next(sorts.Length)];
                lines[at] = Changed(lines[at], sort, Near(lines, sort, words));
                break;
        }
    }

    /// <summary>As often as not a word of the same panel.</summary>
    private string Near(List<string> lines, Regex sort, string[] words)
    {
        var own = random.Next(4) > 0 ? sort.Matches(lines[random.Next(lines.Count)]) : null;
        return own is { Count: > 0 } ? own[random.Next(own.Count)].Value : words[random.Next(words.Length)];
    }

    private string Changed(string line, Regex sort, string word)
    {
        var found = sort.Matches(line);
        if (found.Count == 0)
            return line;
        var at = found[random.Next(found.Count)];
        return line[..at.Index] + word + line[(at.Index + at.Length)..];
    }

    private string OfOtherKind(string line) =>
        Array.FindLast(kinds, k => line.StartsWith(k + " ", StringComparison.Ordinal)) is { } kind
            ? kinds[random.Next(kinds.Length)] + line[kind.Length..]
            : line;

    [GeneratedRegex(@"\b[A-Z]{1,3}\d+\b")]
    private static partial Regex Tag();

    [GeneratedRegex(@"(?<=:)[\w/+]+(-[\w/+]+)?|(?<=\[)[^\]]+(?=\])")]
    private static partial Regex Terminal();

    [GeneratedRegex(@"\b\d+(\.\d+)? (V|A|kA|hp|kW|VA|s|Hz|W)\b")]
    private static partial Regex Rating();

    [GeneratedRegex(@"\b(NO|NC|coil|supply|input|output)(?= )|->|\|")]
    private static partial Regex Contact();

    [GeneratedRegex(@"\b[A-Za-z][\w-]*\b")]
    private static partial Regex Word();
}
