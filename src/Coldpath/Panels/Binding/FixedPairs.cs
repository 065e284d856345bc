namespace Coldpath.Panels.Binding;

/// <summary>Parts and elements of a device that are named by their two terminals.</summary>
internal static class FixedPairs
{
    /// <summary>The two ends of a part or element named by its terminals, "95-96" or "1-2" for 1/L1 and 2/T1.</summary>
    public static (string Left, string Right)? Named(DeviceReading reading, string name)
    {
        var blueprint = reading.Device.Blueprint!;
        var ends = blueprint
            .Parts.SelectMany(p => p.Left.Zip(p.Right))
            .Concat(blueprint.Network.Elements.Select(e => (e.A, e.B)))
            .Distinct()
            .ToList();
        foreach (var (left, right) in Markings.PairsIn(name))
        {
            foreach (var (a, b) in ends)
                if (Means(left, a) && Means(right, b))
                    return (a, b);
            foreach (var (a, b) in ends)
                if (Means(left, b) && Means(right, a))
                    return (b, a);
        }
        return null;
    }

    private static bool Means(string mark, string terminal) =>
        mark == terminal || Markings.IsMarkOf(mark, terminal);

    /// <summary>Whether the words around the tag name a part that the pair is no pole of.</summary>
    public static bool IsOfAnotherPart(DeviceReading reading, (string Left, string Right) pair)
    {
        if (reading.Words.Length == 0)
            return false;
        var poles = reading
            .Device.Blueprint!.Parts.Where(p => p.Name == reading.Words)
            .SelectMany(p => p.Left.Zip(p.Right));
        return !poles.Any(p => p == pair || p == (pair.Right, pair.Left));
    }
}
