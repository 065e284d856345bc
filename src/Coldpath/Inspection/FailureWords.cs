using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What happens when something fails, in words.</summary>
public static class FailureWords
{
    /// <summary>Said of whatever stands before the last point of the failure's name.</summary>
    private static readonly Dictionary<string, string> Sentences = new()
    {
        ["off"] = "the wire at {0} comes off",
        ["touches earth"] = "wire {0} touches earth",
        ["open"] = "the coil of {0} burns open",
        ["jams"] = "{0} jams and stays in",
        ["sticks"] = "{0} sticks",
        ["burnt"] = "{0} burns open",
        ["early"] = "{0} elapses at once",
        ["dead"] = "{0} gives nothing out",
        ["deaf"] = "{0} no longer responds",
        ["runs-on"] = "{0} no longer obeys and runs on",
        ["undischarged"] = "{0} keeps its charge",
        ["backfeeds"] = "the backfeed protection of {0} stays closed",
        ["defeated"] = "{0} is defeated",
        ["let-in"] = "a contact welds elsewhere and lets in {0}",
    };

    /// <summary>Said of a pole or contact, whose marking follows the word, or of the whole device.</summary>
    private static readonly (string Word, string Does)[] OfPoles =
    [
        ("weld", "welds"),
        ("shorted", "fails shorted"),
        ("open", "does not make"),
        ("blocked", "fails open"),
        ("parted", "opens by itself"),
    ];

    public static string Of(Variable failure)
    {
        var point = failure.Name.LastIndexOf('.');
        var (whole, own) = (failure.Name[..point], failure.Name[(point + 1)..]);
        return Sentences.TryGetValue(own, out var sentence)
            ? sentence.Replace("{0}", whole, StringComparison.Ordinal)
            : Winding(whole, own) ?? Pole(failure, own) ?? Plain(failure);
    }

    /// <summary>"M1 burns open at U".</summary>
    private static string? Winding(string whole, string own) =>
        own.StartsWith("burnt", StringComparison.Ordinal)
            ? $"{whole} burns open at {own["burnt".Length..]}"
            : null;

    /// <summary>"contact 13-14 of K1 welds", "pole 2 of K1 does not make", "pole 1 of U1 fails shorted".</summary>
    private static string? Pole(Variable failure, string own)
    {
        foreach (var (word, does) in OfPoles)
            if (own.StartsWith(word, StringComparison.Ordinal))
                return own.Length == word.Length
                    ? $"{failure.Device} {does}"
                    : $"{Part(own[word.Length..])} of {failure.Device} {does}";
        return null;
    }

    private static string Part(string marking) =>
        marking.Contains('-', StringComparison.Ordinal) ? $"contact {marking}" : $"pole {marking}";

    private static string Plain(Variable failure) =>
        failure.Name.StartsWith(failure.Device + ".", StringComparison.Ordinal)
            ? $"{failure.Device}: {failure.Name[(failure.Device.Length + 1)..]}"
            : failure.Name;
}
