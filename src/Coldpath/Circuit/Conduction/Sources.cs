using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>All conductors of all supplies, each with the condition under which it is a source.</summary>
internal sealed class Sources
{
    private readonly Source[][] bySupply;
    private readonly Dictionary<string, int> indexes = [];

    /// <param name="mesh">Whose supplies these are.</param>
    /// <param name="active">For each converter in declared order, the condition under which it is active.</param>
    public Sources(Mesh mesh, IReadOnlyList<Diagram> active)
    {
        Active = active;
        var supplies = mesh.Netlist.Supplies.Concat(mesh.Netlist.Converters.Select(c => c.Output)).ToArray();
        var primary = mesh.Netlist.Supplies.Count;
        var count = 0;
        bySupply = new Source[supplies.Length][];
        for (var i = 0; i < supplies.Length; i++)
        {
            indexes.Add(supplies[i].Name, i);
            var on = mesh.States.Guard(supplies[i].Present);
            if (i >= primary)
                on = mesh.Table.And(on, active[i - primary]);
            bySupply[i] = [.. supplies[i].Conductors.Select(c => SourceOf(supplies[i], i, c, on))];
        }
        All = [.. bySupply.SelectMany(s => s)];

        Source SourceOf(Supply supply, int index, SupplyConductor conductor, Diagram on) =>
            new(
                count++,
                supply,
                index,
                conductor,
                mesh.Net(conductor.Net),
                mesh.Table.And(on, mesh.States.Guard(conductor.Present))
            );
    }

    /// <summary>For each converter in declared order, the condition under which it is active.</summary>
    public IReadOnlyList<Diagram> Active { get; }

    public IReadOnlyList<Source> All { get; }

    /// <summary>The conductors of each supply: primary supplies first, then converters' outputs.</summary>
    public IReadOnlyList<IReadOnlyList<Source>> BySupply => bySupply;

    /// <summary>The supplies whose conductors count everywhere: all but stores.</summary>
    public IEnumerable<IReadOnlyList<Source>> Lasting => bySupply.Where(s => s.Any(c => !c.IsStored));

    public int SupplyCount => bySupply.Length;

    public int IndexOf(string supply) =>
        indexes.TryGetValue(supply, out var index)
            ? index
            : throw new ArgumentException($"no supply {supply}", nameof(supply));
}
