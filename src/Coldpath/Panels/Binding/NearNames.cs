namespace Coldpath.Panels.Binding;

/// <summary>Finds the name that was probably meant.</summary>
internal static class NearNames
{
    /// <summary>Beyond this many a panel's names are too many to look through for every mistake.</summary>
    private const int Considered = 5000;

    /// <summary>The nearest of the candidates, the first of equals; null when none is near.</summary>
    public static string? Nearest(string written, IEnumerable<string> candidates)
    {
        var limit = Math.Max(1, written.Length / 3);
        string? best = null;
        foreach (var candidate in candidates.Take(Considered))
        {
            if (Math.Abs(candidate.Length - written.Length) > limit)
                continue;
            var distance = Distance(written.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (distance > limit)
                continue;
            limit = distance - 1;
            best = candidate;
        }
        return best;
    }

    /// <summary>Insertions, deletions, replacements and swaps of neighbours.</summary>
    private static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        for (var j = 0; j <= b.Length; j++)
            rows[i, j] = i == 0 || j == 0 ? i + j : Step(rows, a, b, i, j);
        return rows[a.Length, b.Length];
    }

    private static int Step(int[,] rows, string a, string b, int i, int j)
    {
        var replaced = rows[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
        var shortest = Math.Min(replaced, Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1);
        var swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
        return swapped ? Math.Min(shortest, rows[i - 2, j - 2] + 1) : shortest;
    }
}
