using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// Where each terminal of the control sheet is drawn. A part that is passed draws its terminals where it is passed
/// first; one that is only touched draws its own where no part does; everything else refers to these.
/// </summary>
internal sealed class Whereabouts
{
    private readonly Dictionary<Terminal, Rung> drawn = [];
    private readonly Dictionary<RungPart, IReadOnlyList<Terminal>> draws = new(
        ReferenceEqualityComparer.Instance
    );
    private readonly Dictionary<Terminal, List<Rung>> shown = [];
    private readonly Dictionary<string, List<(Rung Rung, RungPart Part)>> passed = new(
        StringComparer.Ordinal
    );
    private readonly HashSet<Terminal> onPower;

    public Whereabouts(IReadOnlyList<Rung> rungs, Division division)
    {
        onPower = [.. division.Units.SelectMany(u => u.Terminals.Select(t => new Terminal(u.Device.Tag, t)))];
        var parts = rungs
            .SelectMany(r => r.Leaves.OfType<RungPart>().Select(p => (Rung: r, Part: p)))
            .ToList();
        foreach (var (rung, part) in parts.Where(p => p.Part.IsThrough))
        {
            Draw(rung, part, part.Terminals);
            Listed(passed, part.Device.Tag).Add((rung, part));
        }
        foreach (var (rung, part) in parts.Where(p => !p.Part.IsThrough))
            Draw(rung, part, part.Terminals.Where(t => !onPower.Contains(t)));
        foreach (var (rung, part) in parts)
        foreach (var terminal in part.Terminals)
            Listed(shown, terminal).Add(rung);
    }

    /// <summary>The terminals that stand for themselves here; none: it refers to where they are drawn.</summary>
    public IReadOnlyList<Terminal> DrawnBy(RungPart part) => draws[part];

    /// <summary>Parts of a device that rungs pass, in the order of the rungs.</summary>
    public IReadOnlyList<(Rung Rung, RungPart Part)> PassedOf(string device) =>
        passed.TryGetValue(device, out var list) ? list : [];

    public bool IsOnPower(Terminal terminal) => onPower.Contains(terminal);

    /// <summary>Other rungs in which a terminal is met, and the power sheet when it is drawn there.</summary>
    public IReadOnlyList<Place> Elsewhere(Terminal terminal, Rung than) =>
        [
            .. Power(terminal),
            .. shown[terminal]
                .Where(r => r.Number != than.Number || r.Index != than.Index)
                .Take(3)
                .Distinct()
                .Select(Place.Of),
        ];

    /// <summary>Whether a terminal is met more than once.</summary>
    public bool IsRepeated(Terminal terminal) => onPower.Contains(terminal) || shown[terminal].Count > 1;

    private IEnumerable<Place> Power(Terminal terminal) =>
        onPower.Contains(terminal) ? [Place.OnPower(terminal.ToString())] : [];

    private void Draw(Rung rung, RungPart part, IEnumerable<Terminal> terminals) =>
        draws[part] = [.. terminals.Where(t => drawn.TryAdd(t, rung))];

    private static List<TValue> Listed<TKey, TValue>(Dictionary<TKey, List<TValue>> lists, TKey key)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list))
            lists.Add(key, list = []);
        return list;
    }
}
