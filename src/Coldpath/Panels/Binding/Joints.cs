namespace Coldpath.Panels.Binding;

/// <summary>A terminal, or with no device a node, rail, numbered wire or the earth.</summary>
internal readonly record struct Pin(string? Device, string Name)
{
    public static readonly Pin Earth = new(null, "PE");

    public bool IsEarth => this == Earth;

    public override string ToString() => Device is null ? Name : $"{Device}:{Name}";
}

/// <summary>Which pins are joined by wire. The earth is never joined: what is wired to it is bonded.</summary>
internal sealed class Joints
{
    private readonly Dictionary<Pin, int> numbers = [];
    private readonly List<int> parents = [];

    public void Join(Pin a, Pin b)
    {
        var (first, second) = (RootOf(a), RootOf(b));
        parents[Math.Max(first, second)] = Math.Min(first, second);
    }

    /// <summary>The number of the net that the pin lies on, until the next join.</summary>
    public int RootOf(Pin pin)
    {
        if (!numbers.TryGetValue(pin, out var at))
        {
            at = parents.Count;
            parents.Add(at);
            numbers.Add(pin, at);
        }
        while (parents[at] != at)
            at = parents[at] = parents[parents[at]];
        return at;
    }

    public bool AreJoined(Pin a, Pin b) => RootOf(a) == RootOf(b);
}
