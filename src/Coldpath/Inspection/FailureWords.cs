using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What happens when something fails, in words.</summary>
public static class FailureWords
{
    public static string Of(Variable failure)
    {
        var own = failure.Name[(failure.Name.LastIndexOf('.') + 1)..];
        var whole = failure.Name[..failure.Name.LastIndexOf('.')];
        return own switch
        {
            "off" => $"the wire at {whole} comes off",
            "touches earth" => $"wire {whole} touches earth",
            "open" => $"the coil of {whole} burns open",
            "jams" => $"{whole} jams and stays in",
            "sticks" => $"{whole} sticks",
            "early" => $"{whole} elapses at once",
            "dead" => $"{whole} gives nothing out",
            "deaf" => $"{whole} no longer responds",
            "runs-on" => $"{whole} no longer obeys and runs on",
            "undischarged" => $"{whole} keeps its charge",
            "backfeeds" => $"the backfeed protection of {whole} stays closed",
            "defeated" => $"{whole} is defeated",
            "burnt" => $"{whole} burns open",
            _ when own.StartsWith("burnt", StringComparison.Ordinal) =>
                $"{whole} burns open at {own["burnt".Length..]}",
            _ => Contact(failure, own) ?? Plain(failure),
        };
    }

    private static readonly (string Word, string Does)[] Doings =
    [
        ("weld", "welds"),
        ("shorted", "fails shorted"),
        ("open", "does not make"),
        ("blocked", "fails open"),
        ("parted", "opens by itself"),
    ];

    /// <summary>"contact 13-14 of K1 welds", "pole 2 of K1 does not make", "pole 1 of U1 fails shorted".</summary>
    private static string? Contact(Variable failure, string own)
    {
        foreach (var (word, does) in Doings)
            if (own.StartsWith(word, StringComparison.Ordinal))
                return own.Length == word.Length
                    ? $"{failure.Device} {does}"
                    : $"{(own.Contains('-', StringComparison.Ordinal) ? "contact" : "pole")} {own[word.Length..]} of {failure.Device} {does}";
        return null;
    }

    private static string Plain(Variable failure) =>
        failure.Name.StartsWith(failure.Device + ".", StringComparison.Ordinal)
            ? $"{failure.Device}: {failure.Name[(failure.Device.Length + 1)..]}"
            : failure.Name;
}
