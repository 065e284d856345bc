using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Values of which a variable has to have one, as bits.</summary>
internal readonly record struct Need(int Variable, ulong Allowed);

/// <summary>What a guard asks of single variables, whatever else it asks.</summary>
internal sealed class Needs
{
    private const int MostValues = 64;

    private readonly Dictionary<string, (int Index, IReadOnlyList<string> Values)> variables;

    public Needs(Netlist netlist) =>
        variables = netlist
            .Variables.Index()
            .Where(v => v.Item.Values.Count <= MostValues)
            .ToDictionary(v => v.Item.Name, v => (v.Index, v.Item.Values), StringComparer.Ordinal);

    public IReadOnlyList<Need> Of(Expression guard) =>
        [.. Found(guard).Select(n => new Need(n.Key, n.Value))];

    private Dictionary<int, ulong> Found(Expression guard) =>
        guard switch
        {
            VariableIs v when variables.TryGetValue(v.Variable, out var at) => new()
            {
                [at.Index] = Bit(at.Values, v),
            },
            Not { Term: VariableIs v } when variables.TryGetValue(v.Variable, out var at) => new()
            {
                [at.Index] = ~Bit(at.Values, v),
            },
            All all => Together(all.Terms.Select(Found)),
            Any { Terms.Count: > 0 } any => InEach([.. any.Terms.Select(Found)]),
            _ => [],
        };

    private static ulong Bit(IReadOnlyList<string> values, VariableIs guard) =>
        1ul << values.Index().First(v => v.Item == guard.Value).Index;

    private static Dictionary<int, ulong> Together(IEnumerable<Dictionary<int, ulong>> terms) =>
        terms
            .SelectMany(t => t)
            .GroupBy(n => n.Key)
            .ToDictionary(g => g.Key, g => g.Aggregate(~0ul, (a, n) => a & n.Value));

    private static Dictionary<int, ulong> InEach(IReadOnlyList<Dictionary<int, ulong>> terms) =>
        terms[0]
            .Keys.Where(v => terms.All(t => t.ContainsKey(v)))
            .ToDictionary(v => v, v => terms.Aggregate(0ul, (a, t) => a | t[v]));
}
