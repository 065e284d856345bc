using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>What a netlist's own conditions ask about, so that it can be prepared together.</summary>
/// <param name="Elements">Ids of those that are asked whether they carry current.</param>
/// <param name="LoosePairs">Nets that are asked whether they are energised at grade loose.</param>
internal sealed record NamedIn(IReadOnlyList<string> Elements, IReadOnlyList<NetPair> LoosePairs)
{
    public static NamedIn Of(Netlist netlist)
    {
        var atoms = Conditions(netlist).SelectMany(Atoms).ToArray();
        var elements = atoms
            .OfType<Carries>()
            .Select(c => c.Element)
            .Concat(netlist.Loads.SelectMany(l => l.Elements))
            .Concat(netlist.Devices.SelectMany(d => d.OpensOnShort).SelectMany(o => o.Elements))
            .Concat(netlist.Devices.SelectMany(d => d.Protects).SelectMany(p => p.Elements));
        var pairs = atoms
            .OfType<Energised>()
            .Where(e => e.Grade == Grade.Loose)
            .Select(e => new NetPair(e.A, e.B));
        return new([.. elements.Distinct()], [.. pairs.Distinct()]);
    }

    private static IEnumerable<Expression> Conditions(Netlist netlist) =>
        netlist
            .Variables.SelectMany(v => v.Moves)
            .SelectMany(m => new[] { m.When, m.May })
            .Concat(netlist.Converters.Select(c => c.When))
            .Concat(netlist.Intents.Select(i => i.When));

    private static IEnumerable<Expression> Atoms(Expression expression) =>
        expression switch
        {
            Not n => Atoms(n.Term),
            All a => a.Terms.SelectMany(Atoms),
            Any a => a.Terms.SelectMany(Atoms),
            _ => [expression],
        };
}
