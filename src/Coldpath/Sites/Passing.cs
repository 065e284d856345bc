namespace Coldpath.Sites;

/// <summary>
/// Values that variables are taken to have on a way. A contact that closes and one that opens with the same armature are not
/// passed on one way while nothing has failed.
/// </summary>
internal sealed class Passing
{
    public static readonly Passing Anything = new([], "");

    private readonly Dictionary<int, ulong> allowed;

    private Passing(Dictionary<int, ulong> allowed, string text) => (this.allowed, Text) = (allowed, text);

    /// <summary>The same for the same values.</summary>
    public string Text { get; }

    public int Count => allowed.Count;

    public bool Lets(Link link) =>
        allowed.Count == 0
        || link.Asks is null
        || link.Asks.All(n => !allowed.TryGetValue(n.Variable, out var values) || (values & n.Allowed) != 0);

    /// <summary>With the variable at one of the values, if that is possible.</summary>
    public Passing With(int variable, ulong values)
    {
        var more = new Dictionary<int, ulong>(allowed);
        more[variable] = more.GetValueOrDefault(variable, ~0ul) & values;
        return new(more, string.Join(' ', more.OrderBy(a => a.Key).Select(a => $"{a.Key}:{a.Value:x}")));
    }

    /// <summary>A variable that the links of a way ask impossible things of, and what the first of them asks; null for none.</summary>
    public Need? Conflict(IEnumerable<Link> way)
    {
        var left = new Dictionary<int, ulong>(allowed);
        var first = new Dictionary<int, ulong>();
        foreach (var need in way.SelectMany(l => l.Asks ?? []))
        {
            left[need.Variable] = left.GetValueOrDefault(need.Variable, ~0ul) & need.Allowed;
            if (left[need.Variable] == 0)
                return new(need.Variable, first[need.Variable]);
            first.TryAdd(need.Variable, need.Allowed);
        }
        return null;
    }
}
