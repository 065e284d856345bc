namespace Coldpath.Trials.Sites;

internal enum Control
{
    Own,
    LineUp,
    Neighbour,
}

internal enum StarterKind
{
    Direct,
    HandAuto,
    Reversing,
    SoftStarter,
}

/// <summary>What makes a generated starter differ from the next.</summary>
/// <param name="Permissives">Kinds of the contacts in series before the coil.</param>
/// <param name="Heating">The standing motor is heated through its winding from the foreign control voltage.</param>
/// <param name="IsUnique">Described by a text of its own.</param>
internal sealed record StarterShape(
    StarterKind Kind,
    Control Control,
    IReadOnlyList<string> Permissives,
    int Lamps,
    bool TakesSignal,
    bool Heating,
    bool IsUnique
)
{
    private static readonly string[] Contacts =
    [
        "level contact",
        "pressure contact",
        "flow contact",
        "temperature contact",
        "limit switch",
    ];

    public string Name => $"{Kind}-{Control}".ToLowerInvariant();

    public static StarterShape Of(Random random)
    {
        var kind = (StarterKind)random.Next(4);
        var control = random.Next(10) switch
        {
            < 6 => Control.Own,
            < 9 => Control.LineUp,
            _ => Control.Neighbour,
        };
        var isUnique = random.Next(10) < 4;
        var signal = kind == StarterKind.HandAuto;
        if (!isUnique)
            return new(kind, control, [Contacts[0]], 1, signal, false, false);
        var permissives = Enumerable.Range(0, random.Next(4)).Select(_ => Contacts[random.Next(5)]).ToArray();
        var heating = kind == StarterKind.SoftStarter && control != Control.Own;
        return new(kind, control, permissives, random.Next(3), signal, heating, true);
    }
}
