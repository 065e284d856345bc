using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>A way from one node to another, and the condition under which it is there.</summary>
internal sealed record SmtLink(string From, string To, string Open);

/// <summary>
/// What is reached from somewhere, in layers: h(k+1) holds of a node where h(k) does, or where an open link leads to it
/// from a node where h(k) does. As many layers as the longest way has links are enough.
/// </summary>
internal sealed class SmtReach
{
    private const int MostTried = 20_000;

    private readonly ILookup<string, SmtLink> links;
    private readonly Dictionary<string, string> start;
    private int tried;

    private SmtReach(Dictionary<string, string> start, IEnumerable<SmtLink> links)
    {
        this.start = start;
        this.links = links.Where(l => l.Open != "false").Distinct().ToLookup(l => l.From);
    }

    /// <param name="text">Takes the layers.</param>
    /// <param name="start">For each node whether it is reached to begin with.</param>
    /// <param name="links">Each leads one way.</param>
    /// <returns>For each node whether it is reached.</returns>
    public static Dictionary<string, string> Of(
        SmtText text,
        Dictionary<string, string> start,
        IEnumerable<SmtLink> links
    )
    {
        var reach = new SmtReach(start, links);
        var layer = start;
        for (var i = reach.Longest(); i > 0; i--)
            layer = reach.Next(text, layer);
        return layer;
    }

    private Dictionary<string, string> Next(SmtText text, Dictionary<string, string> last)
    {
        var into = links.SelectMany(l => l).ToLookup(l => l.To);
        return last.ToDictionary(
            n => n.Key,
            n => text.Name(Or(into[n.Key].Select(l => And(l.Open, last[l.From])).Prepend(n.Value)))
        );
    }

    /// <summary>How many links the longest way has that passes no node twice; where that is too much to try, a bound.</summary>
    private int Longest()
    {
        var passed = new HashSet<string>();
        var longest =
            start.Where(n => n.Value != "false").Select(n => LongestFrom(n.Key, passed)).Max(n => (int?)n)
            ?? 0;
        return tried > MostTried ? start.Count - 1 : longest;
    }

    private int LongestFrom(string node, HashSet<string> passed)
    {
        if (++tried > MostTried)
            return 0;
        passed.Add(node);
        var longest = 0;
        foreach (var to in links[node].Select(l => l.To).Distinct().Where(to => !passed.Contains(to)))
            longest = Math.Max(longest, 1 + LongestFrom(to, passed));
        passed.Remove(node);
        return longest;
    }
}
