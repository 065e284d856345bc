namespace Coldpath.Wiring.Failures;

/// <summary>The nets of the power wiring: what main poles, fuses and overloads join to a load that they feed.</summary>
internal static class PowerNets
{
    /// <param name="netlist">Whose.</param>
    /// <param name="more">Nets besides that feed a load elsewhere.</param>
    public static HashSet<string> Of(Netlist netlist, IEnumerable<string>? more = null)
    {
        var neighbours = netlist
            .Elements.Where(e => e.Power && e.Type is not ElementType.Load)
            .SelectMany(e => new[] { (From: e.A, To: e.B), (From: e.B, To: e.A) })
            .ToLookup(pair => pair.From, pair => pair.To);
        var elements = netlist.Elements.ToDictionary(e => e.Id);
        var fed = netlist.Loads.Where(l => l.Elements.Any(id => elements[id].Power));
        var found = fed.SelectMany(l => l.Terminals.Concat(l.Modes.SelectMany(m => m.Feed)))
            .Concat(more ?? [])
            .ToHashSet();
        var open = new Queue<string>(found);
        while (open.TryDequeue(out var net))
            foreach (var next in neighbours[net].Where(found.Add))
                open.Enqueue(next);
        return found;
    }
}
