namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// Pieces of one net that no line on paper joins: knots of several rungs and of parts apart, the power sheet. Each
/// bears a reference to the others.
/// </summary>
internal sealed class Islands
{
    private readonly Dictionary<string, List<(int Knot, Place Place)>> ofNet = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> onPower = new(StringComparer.Ordinal);
    private readonly HashSet<int> seen = [];
    private readonly Knots knots;

    /// <summary>As many others are named; all islands of a net are found by way of its first.</summary>
    private const int Most = 3;

    /// <param name="rungs">Those of parts apart behind the others.</param>
    /// <param name="knots">With all that is drawn joined, joined.</param>
    public Islands(IReadOnlyList<Rung> rungs, Knots knots, PanelWires wires, Division division)
    {
        this.knots = knots;
        foreach (var rung in rungs)
        foreach (var leaf in rung.Leaves)
        foreach (var knot in new[] { leaf.In, leaf.Out })
            Add(knots.Of(knot), rung);
        foreach (var unit in division.Units)
        foreach (var terminal in unit.Terminals.Select(t => new Panels.Terminal(unit.Device.Tag, t)))
            onPower.TryAdd(wires.NetOf(terminal), Place.OnPower(terminal.ToString()));
    }

    /// <summary>Where the power sheet shows a net; null where it does not.</summary>
    public Place? PowerOf(string net) => onPower.GetValueOrDefault(net);

    /// <summary>
    /// Where else the net of a knot is drawn; rungs first, of many the first ones. Empty for one that is whole.
    /// </summary>
    public IReadOnlyList<Place> Elsewhere(int knot)
    {
        var net = knots.NetOf(knot);
        if (net.Length == 0 || net == PanelWires.Earth)
            return [];
        return
        [
            .. Others(net, knots.Of(knot)),
            .. onPower.TryGetValue(net, out var power) ? [power] : Array.Empty<Place>(),
        ];
    }

    private IEnumerable<Place> Others(string net, int but) =>
        ofNet.TryGetValue(net, out var places)
            ? places.Where(p => p.Knot != but).Select(p => p.Place).Take(Most).Distinct()
            : [];

    private void Add(int knot, Rung rung)
    {
        var net = knots.NetOf(knot);
        if (!ofNet.TryGetValue(net, out var places))
            ofNet.Add(net, places = []);
        if (!seen.Add(knot))
            return;
        places.Add((knot, Place.Of(rung)));
    }
}
