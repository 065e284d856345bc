using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>Every predicate in every assignment of small random panels, against the plain network.</summary>
public sealed class ComparisonTests
{
    private const int Panels = 60;
    private const int Assignments = 32;

    [Fact]
    public void The_network_says_what_the_definitions_say()
    {
        for (var number = 0; number < Panels; number++)
            Compare(RandomPanels.Panel(number, Assignments));
    }

    /// <summary>The same at a glance.</summary>
    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Few))]
    public void It_says_so_of_few_assignments(int number) =>
        Compare(RandomPanels.Panel(Panels + number, mostAssignments: 8));

    public static TheoryData<int> Few => [.. Enumerable.Range(0, 12)];

    private static void Compare(Netlist netlist)
    {
        var states = new StateSpace(netlist);
        var network = new Network(netlist, states);
        var questions = Questions(netlist, network).ToArray();
        foreach (var values in AllAssignments(netlist))
        {
            var plain = new PlainNetwork(netlist, values);
            var state = new State(netlist.Variables.Select(v => v.Values.ToList().IndexOf(values[v.Name])));
            questions
                .Where(q => states.Holds(q.Condition, state) != q.Expected(plain))
                .Select(q => q.Name)
                .Should()
                .BeEmpty("of {0} with {1}", netlist.Panel, values);
        }
    }

    private static IEnumerable<(string Name, Diagram Condition, Func<PlainNetwork, bool> Expected)> Questions(
        Netlist netlist,
        Network network
    )
    {
        foreach (var net in netlist.Nets)
        {
            yield return ($"tied hard {net}", network.TiedHard(net), p => p.TiedHard(net));
            yield return ($"earth-tied {net}", network.EarthTied(net), p => p.EarthTied(net));
            yield return ($"live {net}", network.Live(net), p => p.IsLive(net));
            yield return ($"solidly live {net}", network.Live(net, LiveBy.Solid), p => p.SolidlyLive(net));
            yield return (
                $"stored {net}",
                network.Live(net, LiveBy.Stored),
                p => p.IsLive(net) && !p.LiveFrom(net, s => s.Store is null, true)
            );
            yield return (
                $"backfeed {net}",
                network.Live(net, LiveBy.Backfeed),
                p =>
                    p.LiveFrom(net, s => s.Store is null, true)
                    && !p.LiveFrom(net, s => s.Store is null, false)
            );
            yield return (
                $"extra-low {net}",
                network.ExtraLowOnly(net),
                p => p.IsLive(net) && !p.LiveFrom(net, s => !s.ExtraLow, true)
            );
            foreach (var supply in netlist.Supplies.Take(2))
                yield return (
                    $"live {net} from {supply.Name}",
                    network.LiveFrom(net, supply.Name),
                    p => p.LiveFrom(net, supply.Name)
                );
        }
        foreach (var supply in netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output)))
            yield return (
                $"short {supply.Name}",
                network.Short(supply.Name),
                p => p.Shorted().Contains(supply.Name)
            );
        foreach (var element in netlist.Elements)
        {
            yield return ($"carries {element.Id}", network.Carries(element.Id), p => p.Carries(element.Id));
            yield return (
                $"carries short {element.Id}",
                network.CarriesShort(element.Id),
                p => p.CarriesShort(element.Id)
            );
        }
        foreach (var expression in Expressions(netlist))
            yield return (expression.ToString(), network.Of(expression), p => p.Holds(expression));
    }

    private static IEnumerable<Expression> Expressions(Netlist netlist)
    {
        var dice = new Random(netlist.Nets.Count);
        string Net() => netlist.Nets[dice.Next(netlist.Nets.Count)];
        foreach (var move in netlist.Variables.SelectMany(v => v.Moves))
        {
            yield return move.When;
            yield return move.May;
        }
        foreach (var load in netlist.Loads)
        foreach (var turns in Enum.GetValues<Turning>())
            yield return new Runs(load.Name, turns);
        foreach (var load in netlist.Elements.Where(e => e.Type == ElementType.Load))
        {
            yield return new Energised(load.A, load.B, Grade.Solid, 100, 300);
            yield return new Energised(load.A, load.B, Grade.Load, 0, null);
            yield return new Energised(load.A, load.B, Grade.Loose, 100, 110);
        }
        foreach (var grade in Enum.GetValues<Grade>())
            for (var i = 0; i < 4; i++)
            {
                yield return new Energised(Net(), Net(), grade, 0, null);
                yield return new Joined(Net(), Net());
            }
        foreach (var load in netlist.Loads.Where(l => l.Terminals.Count == 3))
        {
            var t = load.Terminals;
            yield return new SinglePhased(t[0], t[1], t[2]);
            foreach (var order in Enum.GetValues<PhaseOrder>())
            foreach (var grade in Enum.GetValues<Grade>())
                yield return new Fed(t[0], t[1], t[2], order, grade);
        }
    }

    private static IEnumerable<IReadOnlyDictionary<string, string>> AllAssignments(Netlist netlist)
    {
        IEnumerable<Dictionary<string, string>> all =
        [
            [],
        ];
        foreach (var variable in netlist.Variables)
            all =
            [
                .. all.SelectMany(a =>
                    variable.Values.Select(v => new Dictionary<string, string>(a) { [variable.Name] = v })
                ),
            ];
        return all;
    }
}
