using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Earth, and what is live.</summary>
internal sealed partial class PlainNetwork
{
    public bool TiedHard(string net) => HardTied().Contains(net);

    private HashSet<string> HardTied() =>
        hardTied ??= Flood([netlist.Earth], BothWays(Conducting.Where(e => e.Type == ElementType.Conductor)));

    private HashSet<string> BondedNets() => bonded ??= Flood([netlist.Earth], SolidLinks(withFaults: false));

    private List<SupplyConductor> Unearthed(Func<Supply, bool> which)
    {
        var (tied, bonded) = (HardTied(), BondedNets());
        bool Contradicted((Supply Supply, SupplyConductor Conductor) c) =>
            on.Any(d =>
                d.Supply == c.Supply && Differ(c.Conductor, d.Conductor) && bonded.Contains(d.Conductor.Net)
            );
        bool Earthed((Supply Supply, SupplyConductor Conductor) c) =>
            bonded.Contains(c.Conductor.Net) && (tied.Contains(c.Conductor.Net) || !Contradicted(c));
        return [.. on.Where(c => which(c.Supply) && !Earthed(c)).Select(c => c.Conductor)];
    }

    public bool EarthTied(string net) => EarthTiedNets().Contains(net);

    private HashSet<string> EarthTiedNets() => earthTied ??= FindEarthTied();

    private HashSet<string> FindEarthTied()
    {
        var (tied, bonded) = (HardTied(), BondedNets());
        bool Free(string net) => !tied.Contains(net);
        var contested = Unearthed(_ => true)
            .Where(c => Free(c.Net))
            .SelectMany(c =>
                Flood(
                    [c.Net],
                    SolidLinks(withFaults: false)
                        .Concat(DiodeLinks(c.Polarity))
                        .Where(l => Free(l.From) && Free(l.To))
                )
            )
            .ToHashSet();
        return [.. tied, .. bonded.Where(n => !contested.Contains(n))];
    }

    public bool IsLive(string net) => LiveNets(_ => true, true).Contains(net);

    public bool SolidlyLive(string net) =>
        !EarthTied(net) && Unearthed(s => s.Store is null).Exists(c => Reaches(c, net, Grade.Load));

    public bool LiveFrom(string net, string supply) => FindLive(s => s.Name == supply, true).Contains(net);

    public bool LiveFrom(string net, Func<Supply, bool> which, bool couplings) =>
        LiveNets(which, couplings).Contains(net);

    private HashSet<string> LiveNets(Func<Supply, bool> which, bool couplings)
    {
        if (!live.TryGetValue((which, couplings), out var nets))
            live.Add((which, couplings), nets = FindLive(which, couplings));
        return nets;
    }

    private HashSet<string> FindLive(Func<Supply, bool> which, bool couplings)
    {
        var held = EarthTiedNets();
        var reached = Unearthed(which)
            .SelectMany(c => Flood([c.Net], LinksAt(Grade.Load, c.Polarity)))
            .ToHashSet();
        var links = BothWays(Conducting.Concat(Leaking)).ToList();
        foreach (var coupling in couplings ? Couplings : [])
            for (var i = 0; i < coupling.Windings.Count; i++)
                foreach (var net in coupling.Windings[i])
                {
                    if (!coupling.FirstDrives || i == 0)
                        links.Add((net, "~" + coupling.Name));
                    if (!coupling.FirstDrives || i > 0)
                        links.Add(("~" + coupling.Name, net));
                }
        bool Free(string net) => !held.Contains(net);
        return Flood(reached.Where(Free), links.Where(l => Free(l.From) && Free(l.To)));
    }
}
