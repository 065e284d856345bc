namespace Coldpath.Circuit.States;

/// <summary>
/// Where one variable's value is kept: the levels of its bits, most significant first. A value's code is its index;
/// the codes that are left over stand for the last value too, so that a condition that holds for every value is
/// true, not merely true on the codes in use.
/// </summary>
/// <param name="Levels">Empty for a variable of one value.</param>
/// <param name="Spare">A level just above them that no variable uses.</param>
/// <param name="Before">For each level one just above it, free for the value that the variable had before something.</param>
/// <param name="Values">How many values there are.</param>
internal sealed record Encoding(IReadOnlyList<int> Levels, int Spare, IReadOnlyList<int> Before, int Values)
{
    public static int Width(int values) => values <= 1 ? 0 : 32 - int.LeadingZeroCount(values - 1);

    public IEnumerable<KeyValuePair<int, bool>> Code(int value) =>
        Levels.Select((level, i) => KeyValuePair.Create(level, (value >> (Levels.Count - 1 - i) & 1) != 0));

    public int Decode(ReadOnlySpan<bool> assignment)
    {
        var code = 0;
        foreach (var level in Levels)
            code = code << 1 | (assignment[level] ? 1 : 0);
        return Math.Min(code, Values - 1);
    }
}
