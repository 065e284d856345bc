namespace Coldpath.Findings;

/// <summary>Finds what a misspelt word was meant to be.</summary>
public static class SpellChecker
{
    /// <summary>Beyond this many the candidates are too many to look through for every mistake.</summary>
    private const int Considered = 5000;

    /// <summary>Numbers; names that the reader takes need no more.</summary>
    private const int OnStack = 1024;

    /// <summary>
    /// The candidate nearest to a word, or null when none is near: one slip in every three letters, at least one, is
    /// let pass. Of equally near ones one with the same first letter, then the first in
    /// ordinal order.
    /// </summary>
    public static string? Nearest(string word, IEnumerable<string> candidates)
    {
        var bound = Math.Max(1, word.Length / 3);
        return candidates
            .Take(Considered)
            .Where(c =>
                c != word && Math.Abs(c.Length - word.Length) <= bound && Math.Min(c.Length, word.Length) > 1
            )
            .Select(c => (Candidate: c, Distance: Distance(word, c, bound)))
            .Where(c => c.Distance <= bound)
            .OrderBy(c => c.Distance)
            .ThenBy(c => Same(c.Candidate[0], word[0]) ? 0 : 1)
            .ThenBy(c => c.Candidate, StringComparer.Ordinal)
            .Select(c => c.Candidate)
            .FirstOrDefault();
    }

    /// <summary>"did you mean 'contactor'?", or null when nothing is near.</summary>
    public static string? Hint(string word, IEnumerable<string> candidates) =>
        Nearest(word, candidates) is { } near ? $"did you mean '{near}'?" : null;

    /// <summary>
    /// Letters to insert, leave out, replace or swap with a neighbour to make one word of the other (Damerau–
    /// Levenshtein, each letter touched once); a change of case alone costs nothing. Anything above the bound is
    /// returned as bound + 1.
    /// </summary>
    internal static int Distance(string a, string b, int bound)
    {
        // Each row is kept only within the bound of the diagonal; beyond it no way is short enough.
        var width = b.Length + 1;
        Span<int> rows = 3 * width <= OnStack ? stackalloc int[3 * width] : new int[3 * width];
        rows.Fill(bound + 1);
        var before = rows[..width];
        var above = rows[width..(2 * width)];
        var row = rows[(2 * width)..];
        for (var j = 0; j <= Math.Min(bound, b.Length); j++)
            above[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row.Fill(bound + 1);
            if (i <= bound)
                row[0] = i;
            for (var j = Math.Max(1, i - bound); j <= Math.Min(b.Length, i + bound); j++)
            {
                var change = Same(a[i - 1], b[j - 1]) ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1], above[j]) + 1, above[j - 1] + change);
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }
            if (row.IndexOfAnyInRange(0, bound) < 0 && above.IndexOfAnyInRange(0, bound) < 0)
                return bound + 1;
            var oldest = before;
            before = above;
            above = row;
            row = oldest;
        }
        return Math.Min(above[b.Length], bound + 1);
    }

    private static bool Same(char a, char b) =>
        a == b || char.ToUpperInvariant(a) == char.ToUpperInvariant(b);
}
