using Coldpath.Wiring;
using QuikGraph.Collections;

namespace Coldpath.Circuit.States;

/// <summary>
/// Where variables meet: nets, those that always conduct into each other taken as one and those where the same variables
/// meet taken as one too, as the phases of a three-pole mesh are. Earth is none: everything meets there.
/// </summary>
internal sealed class MeshPlaces
{
    private readonly int[][] at;
    private readonly List<int>[] of;
    private readonly IReadOnlyList<int>[] beside;

    public MeshPlaces(Netlist netlist)
    {
        at = [.. Groups(netlist)];
        of = [.. netlist.Variables.Select(_ => new List<int>())];
        foreach (var (place, variables) in at.Index())
        foreach (var variable in variables)
            of[variable].Add(place);
        beside =
        [
            .. at.Select(
                (variables, place) =>
                    (IReadOnlyList<int>)
                        [.. variables.SelectMany(v => of[v]).Where(p => p != place).Distinct()]
            ),
        ];
    }

    public int Count => at.Length;

    /// <summary>The variables that meet at the place, at least one.</summary>
    public IReadOnlyList<int> At(int place) => at[place];

    /// <summary>The places where the variable is met.</summary>
    public IReadOnlyList<int> Of(int variable) => of[variable];

    /// <summary>Places that share a variable with this one.</summary>
    public IReadOnlyList<int> Beside(int place) => beside[place];

    private static IEnumerable<int[]> Groups(Netlist netlist)
    {
        var indexes = netlist.Variables.Index().ToDictionary(p => p.Item.Name, p => p.Index);
        var wired = new ForestDisjointSet<string>();
        foreach (var net in netlist.Nets)
            wired.MakeSet(net);
        var elements = netlist.Elements.Where(e => e.A != netlist.Earth && e.B != netlist.Earth).ToArray();
        foreach (var element in elements.Where(IsWire))
            wired.Union(element.A, element.B);
        var meets = new Dictionary<string, SortedSet<int>>();
        foreach (var element in elements)
        foreach (var variable in Guards.Variables(element.Closed))
        {
            Meet(element.A, indexes[variable]);
            Meet(element.B, indexes[variable]);
        }
        return meets.Values.Select(v => v.ToArray()).DistinctBy(v => string.Join(' ', v));

        void Meet(string net, int variable)
        {
            var place = wired.FindSet(net);
            if (!meets.TryGetValue(place, out var variables))
                meets.Add(place, variables = []);
            variables.Add(variable);
        }
    }

    private static bool IsWire(Element element) =>
        element is { Closed: Constant { Value: true }, Type: not (ElementType.Load or ElementType.Series) };
}
