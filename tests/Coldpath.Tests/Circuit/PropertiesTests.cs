using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Tests.Circuit.Failures;
using Coldpath.Wiring;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit;

/// <summary>What must hold of any panel when something is added to it or taken out of it.</summary>
public class PropertiesTests
{
    private const int MostFailing = 3;
    private static readonly Gen<int> Numbers = Gen.Int[1_000_000, 9_999_999];

    [Fact]
    public void A_closed_isolator_in_series_changes_nothing() =>
        Numbers.Sample(
            number =>
            {
                var netlist = FailingPanels.Panel(number, MostFailing);
                if (SeriesIsolator.Into(netlist, number, operated: false) is not { } longer)
                    return;
                var (before, after) = (Failing(netlist, 2), Failing(longer, 2));
                foreach (var state in new Bits(before.Space).All)
                {
                    var closed = new State([.. state.Values, 0]);
                    foreach (var (mine, theirs) in Answers(netlist, before).Zip(Answers(netlist, after)))
                        before
                            .Space.Holds(mine, state)
                            .Should()
                            .Be(after.Space.Holds(theirs, closed), $"of panel {number}");
                }
                foreach (var condition in Conditions(netlist))
                    Sets(after, condition).Should().BeEquivalentTo(Sets(before, condition), $"of {number}");
            },
            iter: 40,
            threads: 1
        );

    /// <summary>
    /// Unless a short hides behind it: what was shorted may be fed when the short is opened, and with it what it
    /// transforms to.
    /// </summary>
    [Fact]
    public void An_open_isolator_in_series_makes_nothing_live_when_nothing_earthed_opens_with_it() =>
        Numbers.Sample(
            number =>
            {
                var netlist = FailingPanels.Panel(number, MostFailing);
                if (SeriesIsolator.Into(netlist, number, operated: true) is not { } longer)
                    return;
                var panel = Failing(longer, 2);
                var (space, table) = (panel.Space, panel.Space.Table);
                var isolator = space.Variables.Count - 1;
                var (closed, open) = (space.Code(isolator, 0), space.Code(isolator, 1));
                var apart = table.AndExists(
                    closed,
                    table.Except(
                        table.Except(space.Domain, panel.Network.AnyShort()),
                        panel.Network.Bonded(SeriesIsolator.Line(longer))
                    ),
                    space.Bits(isolator)
                );
                foreach (var net in netlist.Nets)
                {
                    var live = panel.Network.Live(net);
                    var (with, without) = (
                        table.AndExists(live, closed, space.Bits(isolator)),
                        table.AndExists(live, open, space.Bits(isolator))
                    );
                    table
                        .Meet(apart, table.Except(without, with))
                        .Should()
                        .BeFalse($"{net} of panel {number} is dead with the isolator closed");
                }
            },
            iter: 150,
            threads: 1
        );

    /// <summary>A set is enough just when the target is dead with its poles taken out, and with any others too.</summary>
    [Fact]
    public void A_superset_of_what_isolates_isolates() =>
        Numbers.Sample(
            number =>
            {
                var netlist = RandomPanels.Panel(number);
                var isolators = new Isolators(netlist, new DiagramTable());
                var target = netlist.Nets[new System.Random(number).Next(1, netlist.Nets.Count)];
                var sets = new IsolatingSets(isolators, target);
                var taken = Subsets([.. isolators.Acts]).ToArray();
                var dead = taken.Where(set => IsDead(netlist, set, target)).ToArray();
                foreach (var set in taken)
                    sets.AreEnough(set.Select(a => a.Name))
                        .Should()
                        .Be(
                            taken.Where(other => set.All(other.Contains)).All(dead.Contains),
                            $"of {target} in panel {number}"
                        );
            },
            iter: 100,
            threads: 1
        );

    [Fact]
    public void With_more_failures_no_hazard_is_lost_and_no_smaller_set_found() =>
        Numbers.Sample(
            number =>
            {
                var netlist = FailingPanels.Panel(number, MostFailing);
                foreach (var condition in Conditions(netlist))
                {
                    string[][] found =
                    [
                        .. Enumerable.Range(0, 4).Select(most => Sets(Failing(netlist, most), condition)),
                    ];
                    for (var most = 0; most < 3; most++)
                        found[most + 1]
                            .Where(set => set.Split(' ').Count(name => name != "") <= most)
                            .Should()
                            .BeEquivalentTo(found[most], $"of panel {number}");
                }
            },
            iter: 40,
            threads: 1
        );

    private static Behaviour Failing(Netlist netlist, int most) => new(netlist, new DiagramTable(), most);

    /// <summary>Everything that is said of a state.</summary>
    private static IEnumerable<Diagram> Answers(Netlist netlist, Behaviour panel) =>
        [
            panel.Reachable,
            panel.ReachableSettled,
            panel.Quiet,
            panel.Shorted,
            .. netlist.Nets.Select(panel.Network.Live),
            .. netlist.Loads.Select(l => panel.Network.Runs(l.Name)),
        ];

    /// <summary>Conditions of which cut sets are asked.</summary>
    private static Expression[] Conditions(Netlist netlist) =>
        [
            .. netlist.Loads.Select(l => new Runs(l.Name, Turning.Any)),
            .. netlist.Points.Take(4).Select(p => new Live(p.Net)),
        ];

    private static string[] Sets(Behaviour panel, Expression condition) =>
        [
            .. new CutSets(panel)
                .Of(panel.Space.Table.And(panel.Of(condition), panel.ReachableSettled))
                .Select(set => string.Join(' ', set.Members.Select(m => m.Name)))
                .Distinct(),
        ];

    private static IEnumerable<IsolationAct[]> Subsets(IsolationAct[] acts) =>
        Enumerable
            .Range(0, 1 << acts.Length)
            .Select(mask => acts.Where((_, i) => (mask >> i & 1) != 0).ToArray());

    /// <summary>A panel without these poles and stores, in every assignment that is free to happen.</summary>
    private static bool IsDead(Netlist netlist, IsolationAct[] taken, string target)
    {
        var poles = taken.SelectMany(a => a.Device?.Isolates?.Elements ?? []).ToHashSet();
        var stores = taken.Where(a => a.Store is not null).Select(a => a.Name).ToHashSet();
        var rest = netlist with
        {
            Elements =
            [
                .. netlist.Elements.Select(e =>
                    poles.Contains(e.Id) ? e with { Closed = Expression.False, Leaks = Expression.False } : e
                ),
            ],
            Supplies =
            [
                .. netlist.Supplies.Select(s =>
                    stores.Contains(s.Name) ? s with { Present = Expression.False } : s
                ),
            ],
        };
        var panel = new Behaviour(rest, new DiagramTable());
        return !panel.Space.Table.Meet(panel.Network.Live(target), Free(panel.Space));
    }

    /// <summary>Coils, wiring and controls are whole.</summary>
    private static Diagram Free(StateSpace space) =>
        space.Table.AllOf(
            space
                .Variables.Index()
                .Where(v => v.Item.Class is FailureClass.Coil or FailureClass.Wiring or FailureClass.Control)
                .Select(v => space.Is(v.Index, space.Rest[v.Index]))
                .Prepend(space.Domain)
        );
}
