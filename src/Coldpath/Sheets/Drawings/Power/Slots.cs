namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Places across: the ends of a pole stand above each other.</summary>
internal static class Slots
{
    /// <summary>Slot of each terminal above and of each below.</summary>
    public static (IReadOnlyDictionary<string, int> Above, IReadOnlyDictionary<string, int> Below) Of(
        Sides sides,
        IReadOnlyList<ElementPath> paths
    )
    {
        var above = sides.Above.Select((t, i) => (t, i)).ToDictionary(p => p.t, p => p.i);
        var below = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var terminal in sides.Below)
            if (Partner(terminal, paths) is { } partner && above.TryGetValue(partner, out var slot))
                Take(below, terminal, slot);
        foreach (var terminal in sides.Below.Where(t => !below.ContainsKey(t)))
            Take(below, terminal, above.GetValueOrDefault(terminal, 0));
        return (above, below);
    }

    /// <summary>The slot wanted, or the next free one.</summary>
    private static void Take(Dictionary<string, int> taken, string terminal, int slot)
    {
        while (taken.ContainsValue(slot))
            slot++;
        taken.Add(terminal, slot);
    }

    private static string? Partner(string terminal, IReadOnlyList<ElementPath> paths) =>
        paths.FirstOrDefault(p => p.IsThrough && !p.IsLoad && p.To == terminal)?.From;
}
