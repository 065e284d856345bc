namespace Coldpath.Sheets.Drawings.Control;

/// <summary>A node drawn as an upright line: rungs that end at it come first, those that begin at it hang below.</summary>
internal sealed class Stem(string net)
{
    private readonly List<int> givers = [];
    private readonly List<int> takers = [];

    public string Net => net;

    /// <summary>Indices of rungs that end at it, one after the other; none where a reference leads here.</summary>
    public IReadOnlyList<int> Givers => givers;

    /// <summary>Indices of rungs that begin at it.</summary>
    public IReadOnlyList<int> Takers => takers;

    /// <summary>More than a rung's plain end.</summary>
    public bool IsDrawn => givers.Count + takers.Count > 1;

    public void Give(int rung) => givers.Add(rung);

    public void Take(int rung) => takers.Add(rung);
}
