using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>How a net stays live though isolators are taken out, against every assignment of small panels.</summary>
[Trait("Set", "engine")]
public class SurvivalTests
{
    public static TheoryData<int> Panels => [.. Enumerable.Range(880_000, 6)];

    [Theory]
    [MemberData(nameof(Panels))]
    public void A_net_stays_live_where_some_assignment_keeps_it_so(int number)
    {
        var netlist = RandomPanels.Panel(number, 16);
        var dice = new System.Random(number);
        var isolators = new Isolators(netlist, new DiagramTable())
        {
            Usual = [.. netlist.Variables.Select(v => dice.Next(v.Values.Count))],
        };
        var done = isolators.Acts.Where(_ => dice.Next(2) == 0).Select(a => a.Name).ToArray();
        foreach (var net in netlist.Nets)
        {
            var survival = isolators.StaysLive(net, done);
            (survival is not null).Should().Be(CanLive(netlist, isolators, done, net), $"{net} of {number}");
            if (survival is null)
            {
                isolators
                    .OnlyWhileWhole([net], done)
                    .Should()
                    .Equal(
                        netlist
                            .Elements.Where(e => e.Type == ElementType.Conductor)
                            .Where(e => CanLive(Out(netlist, [e.Id]), isolators, done, net))
                            .Select(e => e.Id),
                        $"{net} of {number}"
                    );
                continue;
            }
            survival.Done.Intersect(done).Should().BeEquivalentTo(done);
            netlist
                .Variables.Index()
                .Where(v => Freedom.StaysWhole(v.Item))
                .All(v => v.Item.Values[survival.State[v.Index]] == v.Item.Rest)
                .Should()
                .BeTrue();
            IsLive(netlist, isolators, survival.Done, survival.State, net).Should().BeTrue($"of {number}");
            var usual = new State(
                netlist.Variables.Select(
                    (v, i) => Freedom.StaysWhole(v) ? v.Values.ToList().IndexOf(v.Rest) : isolators.Usual![i]
                )
            );
            if (IsLive(netlist, isolators, survival.Done, usual, net))
                survival.State.Should().Be(usual, $"{net} of {number}");
        }
    }

    private static bool CanLive(Netlist netlist, Isolators isolators, string[] done, string net) =>
        Subsets([.. isolators.Acts.Select(a => a.Name).Except(done)])
            .Select(more => Taken(netlist, isolators, [.. done, .. more]))
            .Any(left => Assignments(left).Any(values => new PlainNetwork(left, values).IsLive(net)));

    private static bool IsLive(
        Netlist netlist,
        Isolators isolators,
        IReadOnlyCollection<string> done,
        State state,
        string net
    ) =>
        new PlainNetwork(
            Taken(netlist, isolators, done),
            netlist.Variables.Index().ToDictionary(v => v.Item.Name, v => v.Item.Values[state[v.Index]])
        ).IsLive(net);

    /// <summary>Without the poles of these devices and the charge of these stores.</summary>
    private static Netlist Taken(Netlist netlist, Isolators isolators, IReadOnlyCollection<string> done)
    {
        var acts = isolators.Acts.Where(a => done.Contains(a.Name)).ToArray();
        var left = Out(netlist, [.. acts.SelectMany(a => a.Device?.Isolates?.Elements ?? [])]);
        return left with
        {
            Supplies = [.. left.Supplies.Select(Left)],
            Converters = [.. left.Converters.Select(c => c with { Output = Left(c.Output) })],
        };

        Supply Left(Supply supply) =>
            acts.Any(a => a.Store is not null && a.Name == supply.Name)
                ? supply with
                {
                    Present = Expression.False,
                }
                : supply;
    }

    private static Netlist Out(Netlist netlist, IReadOnlyCollection<string> elements) =>
        netlist with
        {
            Elements =
            [
                .. netlist.Elements.Select(e =>
                    elements.Contains(e.Id)
                        ? e with
                        {
                            Closed = Expression.False,
                            Leaks = Expression.False,
                        }
                        : e
                ),
            ],
        };

    private static IEnumerable<string[]> Subsets(string[] names) =>
        Enumerable
            .Range(0, 1 << names.Length)
            .Select(mask => names.Where((_, i) => (mask >> i & 1) != 0).ToArray());

    private static IEnumerable<Dictionary<string, string>> Assignments(Netlist netlist)
    {
        IEnumerable<Dictionary<string, string>> all =
        [
            [],
        ];
        foreach (var variable in netlist.Variables)
        {
            var values = Freedom.StaysWhole(variable) ? [variable.Rest] : variable.Values;
            all =
            [
                .. all.SelectMany(a =>
                    values.Select(v => new Dictionary<string, string>(a) { [variable.Name] = v })
                ),
            ];
        }
        return all;
    }
}
