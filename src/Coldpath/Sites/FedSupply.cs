using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>A supply of a panel that the site feeds, and what feeds it.</summary>
/// <param name="Tag">The supply's tag in its panel.</param>
/// <param name="Supply">As the panel describes it.</param>
/// <param name="Joints">The joint at each of its conductors, by the conductor's name.</param>
internal sealed record FedSupply(string Tag, Supply Supply, IReadOnlyDictionary<string, string> Joints)
{
    /// <summary>How far two voltages may differ and still count as the same, as a part of the larger.</summary>
    private const double Tolerance = 0.1;

    /// <summary>Supplies of the panel that the site feeds, in declared order.</summary>
    public static IReadOnlyList<FedSupply> Of(SitePart part)
    {
        var jointAt = part.Nets.ToLookup(n => n.Value, n => n.Key, StringComparer.Ordinal);
        return
        [
            .. part.Fed.SelectMany(tag =>
                part.Member!.Bound.Netlist!.Supplies.Where(s => s.Name == tag)
                    .Select(s => new FedSupply(
                        tag,
                        s,
                        s.Conductors.Where(c => jointAt[c.Net].Any())
                            .ToDictionary(c => c.Name, c => jointAt[c.Net].First(), StringComparer.Ordinal)
                    ))
            ),
        ];
    }

    /// <summary>Whether the source arrives here through switches alone, well or wrong.</summary>
    public bool IsFedBy(Source source, Outline outline) => Arriving(source, outline).Any();

    /// <summary>
    /// Each conductor gets one of the source's, and any two of them the voltage that the panel is made for, in its
    /// phase order.
    /// </summary>
    public bool Fits(Source source, Outline outline)
    {
        var pairs = Arriving(source, outline).ToArray();
        return pairs.DistinctBy(p => p.Here.Name).Count() == pairs.Length
            && pairs.All(a => pairs.All(b => Agree(Between(a.Here, b.Here), Between(a.There, b.There))));
    }

    /// <summary>What arrives instead, as volts between the first two conductors: for a message.</summary>
    public IEnumerable<(SupplyConductor Here, SupplyConductor There)> Arriving(
        Source source,
        Outline outline
    ) =>
        from conductor in Supply.Conductors
        where Joints.ContainsKey(conductor.Name)
        from feed in outline.Feeds
        where feed.Joint == Joints[conductor.Name] && feed.Source.Name == source.Name
        where feed.Grade < Grade.Loose
        select (conductor, feed.Conductor);

    /// <summary>As a phasor.</summary>
    public static (double X, double Y) Between(SupplyConductor a, SupplyConductor b)
    {
        var (from, to) = (Phasor(a), Phasor(b));
        return (to.X - from.X, to.Y - from.Y);
    }

    private static (double X, double Y) Phasor(SupplyConductor c) =>
        (c.Volts * Math.Cos(c.Degrees * Math.PI / 180), c.Volts * Math.Sin(c.Degrees * Math.PI / 180));

    private static bool Agree((double X, double Y) a, (double X, double Y) b)
    {
        var largest = Math.Max(Math.Sqrt((a.X * a.X) + (a.Y * a.Y)), Math.Sqrt((b.X * b.X) + (b.Y * b.Y)));
        var (x, y) = (a.X - b.X, a.Y - b.Y);
        return Math.Sqrt((x * x) + (y * y)) <= Tolerance * largest + 1;
    }
}
