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
            _ => Contact(failure, own) ?? Plain(failure),
        };
    }

    /// <summary>"contact 13-14 of K1 welds", "pole 2 of K1 welds", "pole 1 of U1 fails shorted".</summary>
    private static string? Contact(Variable failure, string own)
    {
        foreach (var (word, does) in new[] { ("weld", "welds"), ("shorted", "fails shorted") })
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
