using Coldpath.Circuit.Sequence;
using Coldpath.Tests.Circuit.Failures;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>Variables at their worst leave what can be live as it was.</summary>
[Trait("Set", "engine")]
public class AtWorstTests
{
    public static TheoryData<int> Panels => [.. Enumerable.Range(850_000, 20)];

    public static TheoryData<int> Converting =>
        [
            .. Enumerable
                .Range(855_000, 200)
                .Where(n => RandomPanels.Panel(n, 24).Converters.Count > 0)
                .Take(16),
        ];

    [Theory]
    [MemberData(nameof(Panels))]
    public void What_can_be_live_stays_the_same(int number)
    {
        Compare(number, FailingPanels.Panel(number, mostFailing: 2, mostAssignments: 24));
    }

    /// <summary>So it does whatever a converter asks to be active.</summary>
    [Theory]
    [MemberData(nameof(Converting))]
    public void So_it_does_with_converters_that_ask_much(int number)
    {
        var netlist = RandomPanels.Panel(number, 24);
        var dice = new System.Random(number);
        Compare(number, netlist with { Converters = [.. netlist.Converters.Select(Asking)] });

        Converter Asking(Converter converter) => converter with { When = Asked(converter.When) };

        Expression Asked(Expression when)
        {
            var variable = netlist.Variables[dice.Next(netlist.Variables.Count)];
            Expression other = new VariableIs(variable.Name, variable.Values[0]);
            string Net() => netlist.Nets[dice.Next(netlist.Nets.Count)];
            return dice.Next(6) switch
            {
                0 => new Any([when, other]),
                1 => new All([when, new Not(new Any([other, new Not(other)]))]),
                2 => new Any([when, new Energised(Net(), Net(), Grade.Loose, 0, null)]),
                3 => new Any([when, new Fed(Net(), Net(), Net(), PhaseOrder.Any, Grade.Solid)]),
                4 => new All([when, new Not(new Energised(Net(), Net(), Grade.Solid, 0, null))]),
                _ => new Any([when, new Energised(Net(), Net(), Grade.Solid, 0, null)]),
            };
        }
    }

    private static void Compare(int number, Netlist netlist)
    {
        var dice = new System.Random(number);
        string[] names = [.. netlist.Variables.Select(v => v.Name).OrderBy(_ => dice.Next())];
        var kept = names.Take(dice.Next(3)).ToHashSet();
        var given = names
            .Skip(kept.Count)
            .Take(dice.Next(2))
            .ToDictionary(n => n, n => netlist.Variables.Single(v => v.Name == n).Rest);

        var worst = new AtWorst(netlist, kept, given);

        Live(worst.Netlist, kept, []).Should().BeEquivalentTo(Live(netlist, kept, given), $"of {number}");
        worst.Netlist.Variables.Select(v => v.Name).Intersect(kept).Should().HaveCount(kept.Count);
        given.All(g => worst.Values[g.Key] == g.Value).Should().BeTrue();
        worst.Values.Keys.Concat(worst.Netlist.Variables.Select(v => v.Name)).Should().BeEquivalentTo(names);
    }

    /// <summary>Each pole can also weld: closed and not welded is as bad as welded, so that one condition is left.</summary>
    [Fact]
    public void A_switch_whose_poles_may_weld_comes_down_to_its_position()
    {
        var board = new Board().Switch("Q1", "off", "on");
        foreach (var pole in (string[])["1", "2", "3"])
        {
            board.Variable($"Q1.{pole}", VariableKind.Failure, "sound", "welded");
            board.Element(
                $"Q1.{pole}",
                ElementType.Contact,
                $"L{pole}",
                $"u{pole}",
                Expression.AnyOf(Is("Q1", "on"), Is($"Q1.{pole}", "welded"))
            );
        }
        var worst = new AtWorst(board.Build(), new HashSet<string>(), new Dictionary<string, string>());

        worst.Netlist.Variables.Should().BeEmpty();
        Live(worst.Netlist, new HashSet<string>(), [])
            .Should()
            .BeEquivalentTo([" u1", " u2", " u3", " L1", " L2", " L3"]);
    }

    /// <summary>Nets that can be live, each with values of the variables that are kept.</summary>
    private static HashSet<string> Live(
        Netlist netlist,
        IReadOnlySet<string> kept,
        Dictionary<string, string> given
    ) =>
        [
            .. from values in Assignments(netlist)
            where given.All(g => values[g.Key] == g.Value)
            let plain = new PlainNetwork(netlist, values)
            let told = string.Join(',', kept.Order(StringComparer.Ordinal).Select(k => values[k]))
            from net in netlist.Nets
            where plain.IsLive(net)
            select $"{told} {net}",
        ];

    private static IEnumerable<Dictionary<string, string>> Assignments(Netlist netlist)
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
