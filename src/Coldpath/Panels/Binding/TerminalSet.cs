namespace Coldpath.Panels.Binding;

/// <summary>Terminals that may be spoken of by their whole marking or, where it is the only one, by a part of it.</summary>
internal sealed class TerminalSet
{
    private readonly HashSet<string> whole;

    /// <summary>Null for a part that more than one terminal has.</summary>
    private readonly Dictionary<string, string?> byPart = new(StringComparer.Ordinal);

    public TerminalSet(IReadOnlyList<string> terminals)
    {
        InOrder = terminals;
        whole = [.. terminals];
        foreach (var terminal in whole.Where(t => t.Contains('/')))
        foreach (var part in terminal.Split('/').Distinct())
            if (!byPart.TryAdd(part, terminal))
                byPart[part] = null;
    }

    public IReadOnlyList<string> InOrder { get; }

    public bool Contains(string terminal) => whole.Contains(terminal);

    public string? Find(string mark) => whole.Contains(mark) ? mark : byPart.GetValueOrDefault(mark);
}
