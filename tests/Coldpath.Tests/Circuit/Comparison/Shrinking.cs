using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Makes a panel smaller for as long as it still shows what it showed.</summary>
internal static class Shrinking
{
    public static Netlist Smallest(Netlist netlist, Func<Netlist, bool> shows)
    {
        while (Smaller(netlist).FirstOrDefault(shows) is { } smaller)
            netlist = smaller;
        return netlist;
    }

    private static IEnumerable<Netlist> Smaller(Netlist n) =>
        n
            .Variables.SelectMany(v => v.Values.Select(value => Fixed(n, v, value)))
            .Concat(n.Elements.Select(e => WithoutElement(n, e)))
            .Concat(Without(n.Converters).Select(list => n with { Converters = list }))
            .Concat(Without(n.Couplings).Select(list => n with { Couplings = list }))
            .Concat(Without(n.Supplies).Select(list => n with { Supplies = list }))
            .Concat(Without(n.Loads).Select(list => n with { Loads = list }))
            .Concat(Without(n.Devices).Select(list => n with { Devices = list }))
            .Concat(Without(n.Constraints).Select(list => n with { Constraints = list }))
            .Concat(Without(n.Powered).Select(list => n with { Powered = list }))
            .Concat(Without(n.Points).Select(list => n with { Points = list }))
            .Concat(
                n.Elements.Where(e => e.Type == ElementType.Conductor && IsTrue(e.Closed))
                    .Select(e => Joined(n, e))
            )
            .Concat(
                n.Elements.Where(e => !IsTrue(e.Closed))
                    .Select(e => WithElement(n, e, e with { Closed = Expression.True }))
            )
            .Concat(n.Variables.SelectMany(v => Without(v.Moves).Select(list => WithMoves(n, v, list))))
            .Concat(n.Variables.SelectMany(v => SimplerMoves(v).Select(list => WithMoves(n, v, list))))
            .Concat(
                n.Supplies.SelectMany(s => Without(s.Conductors).Select(list => WithConductors(n, s, list)))
            )
            .Concat(
                n.Nets.Where(net => net != n.Earth && !IsUsed(n, net))
                    .Select(net => n with { Nets = [.. n.Nets.Where(x => x != net)] })
            );

    private static bool IsTrue(Expression e) => e is Constant { Value: true };

    private static IEnumerable<T[]> Without<T>(IReadOnlyList<T> list) =>
        Enumerable.Range(0, list.Count).Select(i => list.Where((_, k) => k != i).ToArray());

    private static IEnumerable<Move[]> SimplerMoves(Variable v)
    {
        for (var i = 0; i < v.Moves.Count; i++)
            foreach (var simpler in Simpler(v.Moves[i]))
                yield return [.. v.Moves.Select((m, k) => k == i ? simpler : m)];
    }

    private static IEnumerable<Move> Simpler(Move move)
    {
        if (move.When is not Constant)
        {
            yield return move with
            {
                When = Expression.True,
            };
            yield return move with
            {
                When = Expression.False,
            };
        }
        if (move.May is not Constant)
            yield return move with
            {
                May = Expression.False,
            };
    }

    private static Netlist WithMoves(Netlist n, Variable v, Move[] moves) =>
        n with
        {
            Variables = [.. n.Variables.Select(x => x == v ? v with { Moves = moves } : x)],
        };

    private static Netlist WithConductors(Netlist n, Supply s, SupplyConductor[] conductors) =>
        n with
        {
            Supplies = [.. n.Supplies.Select(x => x == s ? s with { Conductors = conductors } : x)],
        };

    private static Netlist WithElement(Netlist n, Element e, Element changed) =>
        n with
        {
            Elements = [.. n.Elements.Select(x => x == e ? changed : x)],
        };

    private static Netlist WithoutElement(Netlist n, Element e) =>
        Rewritten(
            n with
            {
                Elements = [.. n.Elements.Where(x => x != e)],
                Loads =
                [
                    .. n.Loads.Select(l => l with { Elements = [.. l.Elements.Where(id => id != e.Id)] }),
                ],
                Devices = [.. n.Devices.Select(d => WithoutElement(d, e.Id))],
            },
            x =>
                x is Carries c && c.Element == e.Id || x is Closed d && d.Element == e.Id
                    ? Expression.False
                    : x
        );

    private static NetlistDevice WithoutElement(NetlistDevice d, string id) =>
        d with
        {
            Isolates = d.Isolates is { } i ? i with { Elements = [.. i.Elements.Where(x => x != id)] } : null,
            Protects = [.. d.Protects.Select(p => p with { Elements = [.. p.Elements.Where(x => x != id)] })],
            OpensOnShort =
            [
                .. d.OpensOnShort.Select(o => o with { Elements = [.. o.Elements.Where(x => x != id)] }),
            ],
        };

    private static Netlist Fixed(Netlist n, Variable v, string value) =>
        Rewritten(
            n with
            {
                Variables = [.. n.Variables.Where(x => x != v)],
                Powered = [.. n.Powered.Where(o => o.Variable != v.Name)],
                Devices = [.. n.Devices.Select(d => WithoutVariable(d, v.Name))],
            },
            x =>
                x is VariableIs i && i.Variable == v.Name
                    ? (i.Value == value ? Expression.True : Expression.False)
                    : x
        );

    private static NetlistDevice WithoutVariable(NetlistDevice d, string name) =>
        d with
        {
            Isolates = d.Isolates?.Variable == name ? null : d.Isolates,
            Protects = [.. d.Protects.Where(p => p.Variable != name)],
            OpensOnShort = [.. d.OpensOnShort.Where(o => o.Variable != name)],
        };

    /// <summary>A conductor that is always closed taken as one net.</summary>
    private static Netlist Joined(Netlist n, Element e)
    {
        var (gone, kept) = e.B == n.Earth ? (e.A, e.B) : (e.B, e.A);
        string Net(string net) => net == gone ? kept : net;
        var without = n with
        {
            Elements = [.. n.Elements.Where(x => x != e).Select(x => x with { A = Net(x.A), B = Net(x.B) })],
            Supplies = [.. n.Supplies.Select(s => Renamed(s, Net))],
            Converters = [.. n.Converters.Select(c => Renamed(c, Net))],
            Couplings = [.. n.Couplings.Select(c => c with { Windings = Renamed(c.Windings, Net) })],
            Loads = [.. n.Loads.Select(l => Renamed(l, Net))],
            Points = [],
            Nets = [.. n.Nets.Where(x => x != gone)],
        };
        return Rewritten(without, x => Renamed(x, Net));
    }

    private static IReadOnlyList<string>[] Renamed(
        IEnumerable<IReadOnlyList<string>> windings,
        Func<string, string> net
    ) => [.. windings.Select(w => (string[])[.. w.Select(net)])];

    private static Supply Renamed(Supply s, Func<string, string> net) =>
        s with
        {
            Conductors = [.. s.Conductors.Select(c => c with { Net = net(c.Net) })],
        };

    private static Converter Renamed(Converter c, Func<string, string> net) =>
        c with
        {
            Inputs = [.. c.Inputs.Select(net)],
            Windings = Renamed(c.Windings, net),
            Output = Renamed(c.Output, net),
        };

    private static Load Renamed(Load l, Func<string, string> net)
    {
        NetPair Pair(NetPair p) => new(net(p.A), net(p.B));
        return l with
        {
            Terminals = [.. l.Terminals.Select(net)],
            Modes =
            [
                .. l.Modes.Select(m =>
                    m with
                    {
                        Feed = [.. m.Feed.Select(net)],
                        Joined = [.. m.Joined.Select(Pair)],
                        Apart = [.. m.Apart.Select(Pair)],
                    }
                ),
            ],
        };
    }

    private static Expression Renamed(Expression e, Func<string, string> net) =>
        e switch
        {
            Energised x => x with { A = net(x.A), B = net(x.B) },
            Fed x => x with { A = net(x.A), B = net(x.B), C = net(x.C) },
            SinglePhased x => x with { A = net(x.A), B = net(x.B), C = net(x.C) },
            Joined x => x with { A = net(x.A), B = net(x.B) },
            Live x => new Live(net(x.Net)),
            _ => e,
        };

    private static bool IsUsed(Netlist n, string net)
    {
        var used = n
            .Elements.SelectMany(e => new[] { e.A, e.B })
            .Concat(
                n.Supplies.Concat(n.Converters.Select(c => c.Output))
                    .SelectMany(s => s.Conductors)
                    .Select(c => c.Net)
            )
            .Concat(n.Converters.SelectMany(c => c.Inputs.Concat(c.Windings.SelectMany(w => w))))
            .Concat(n.Couplings.SelectMany(c => c.Windings.SelectMany(w => w)))
            .Concat(n.Loads.SelectMany(l => l.Terminals.Concat(l.Modes.SelectMany(m => m.Feed))))
            .Concat(n.Points.Select(p => p.Net));
        var asked = false;
        Rewritten(
            n,
            e =>
            {
                asked |= Renamed(e, x => x == net ? "?" : x) != e;
                return e;
            }
        );
        return asked || used.Contains(net);
    }

    private static Netlist Rewritten(Netlist n, Func<Expression, Expression> atom)
    {
        Expression On(Expression e) =>
            e switch
            {
                Not x => Expression.Negate(On(x.Term)),
                All x => Expression.AllOf(x.Terms.Select(On)),
                Any x => Expression.AnyOf(x.Terms.Select(On)),
                _ => atom(e),
            };
        Supply OnSupply(Supply s) =>
            s with
            {
                Present = On(s.Present),
                Conductors = [.. s.Conductors.Select(c => c with { Present = On(c.Present) })],
            };
        return n with
        {
            Supplies = [.. n.Supplies.Select(OnSupply)],
            Converters =
            [
                .. n.Converters.Select(c => c with { When = On(c.When), Output = OnSupply(c.Output) }),
            ],
            Variables =
            [
                .. n.Variables.Select(v =>
                    v with
                    {
                        Moves = [.. v.Moves.Select(m => m with { When = On(m.When), May = On(m.May) })],
                    }
                ),
            ],
            Elements =
            [
                .. n.Elements.Select(e =>
                    e with
                    {
                        Closed = On(e.Closed),
                        Leaks = e.Leaks is null ? null : On(e.Leaks),
                    }
                ),
            ],
            Constraints = [.. n.Constraints.Select(c => c with { Holds = On(c.Holds) })],
        };
    }
}
