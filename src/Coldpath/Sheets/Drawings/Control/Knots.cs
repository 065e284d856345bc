namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// Places in rungs where leads meet, as numbers; what is drawn joined there is one knot. Several knots may belong to
/// one net: then references lead from one to the other.
/// </summary>
internal sealed class Knots
{
    private readonly List<int> parents = [];
    private readonly List<string?> nets = [];

    public int New()
    {
        parents.Add(parents.Count);
        nets.Add(null);
        return parents.Count - 1;
    }

    public int Of(int knot)
    {
        while (parents[knot] != knot)
            knot = parents[knot] = parents[parents[knot]];
        return knot;
    }

    public void Join(int a, int b)
    {
        var (first, second) = (Math.Min(Of(a), Of(b)), Math.Max(Of(a), Of(b)));
        nets[first] ??= nets[second];
        parents[second] = first;
    }

    public void Name(int knot, string net) => nets[Of(knot)] ??= net;

    /// <summary>The net that it belongs to; empty for a lead that nothing names.</summary>
    public string NetOf(int knot) => nets[Of(knot)] ?? "";
}
