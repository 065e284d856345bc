using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>Uncertain coils put to the solver.</summary>
public class SharpenedTests
{
    private static readonly Expression In = new VariableIs("K1", "in");

    /// <summary>A coil of 100 ohm behind a lamp: what the lamp leaves of 24 V decides.</summary>
    [Theory, Trait("Set", "engine")]
    [InlineData(10, true, false)]
    [InlineData(30, true, true)]
    [InlineData(150, false, false)]
    public void What_the_lamp_leaves_decides(double lamp, bool reached, bool uncertain)
    {
        var behaviour = new Behaviour(Panel(new Ohms(lamp, 0)), new DiagramTable());
        behaviour
            .ShortestTo(behaviour.Of(In))!
            .ThroughUncertain.Should()
            .BeTrue("without the solver nobody knows");

        var sharpened = behaviour.Sharpened()!;
        var story = sharpened.ShortestTo(sharpened.Of(In));

        (story is not null).Should().Be(reached);
        (story?.ThroughUncertain ?? false).Should().Be(uncertain);
    }

    [Fact, Trait("Set", "engine")]
    public void An_impedance_that_nobody_knows_leaves_it_uncertain()
    {
        var behaviour = new Behaviour(Panel(new Ohms(0, 0)), new DiagramTable()).Sharpened()!;

        behaviour.ShortestTo(behaviour.Of(In))!.ThroughUncertain.Should().BeTrue();
    }

    /// <summary>"Never" through the solver: what is refuted is proved never to happen.</summary>
    [Fact, Trait("Set", "engine")]
    public void A_refuted_pull_proves_the_intent()
    {
        var netlist = Panel(new Ohms(150, 0));
        var intent = new Intent { Form = IntentForm.Never, When = In };

        new Questions(new Behaviour(netlist, new DiagramTable()))
            .Answer(intent)
            .Outcome.Should()
            .Be(Outcome.Refuted);
        new Questions(new Behaviour(netlist, new DiagramTable()).Sharpened()!)
            .Answer(intent)
            .Outcome.Should()
            .NotBe(Outcome.Refuted);
    }

    /// <summary>The solver only decides what was open: it takes nothing away that is sure and adds nothing that cannot be.</summary>
    [Fact]
    public void What_is_sure_stays_and_what_cannot_be_does_not_come()
    {
        var (decided, open) = (0, 0);
        for (var number = 0; number < 500; number++)
        {
            var netlist = WithOhms(RandomPanels.Panel(300_000 + number, 256), new Random(number));
            var behaviour = new Behaviour(netlist, new DiagramTable());
            if (!behaviour.RestsOnUncertain)
                continue;
            var sharpened = behaviour.Sharpened()!;
            open++;
            decided += ReferenceEquals(behaviour, sharpened) ? 0 : 1;
            var table = behaviour.Space.Table;
            foreach (var (before, after) in behaviour.Transitions.Zip(sharpened.Transitions))
            {
                table.Entails(before.Certain, after.Certain).Should().BeTrue();
                table.Entails(after.Certain, table.Or(before.Certain, before.Uncertain)).Should().BeTrue();
                table.Entails(after.Uncertain, before.Uncertain).Should().BeTrue();
                table.Meet(after.Certain, after.Uncertain).Should().BeFalse();
            }
        }
        open.Should().BeGreaterThan(20);
        decided.Should().BeGreaterThan(10);
    }

    /// <summary>A ruling holds for a whole conducting set: its states must have the voltage in common.</summary>
    [Fact]
    public void Every_state_of_a_conducting_set_has_the_same_voltage()
    {
        var (sets, compared) = (0, 0);
        for (var number = 0; number < 400; number++)
        {
            var netlist = WithOhms(RandomPanels.Panel(300_000 + number, 256), new Random(number));
            var behaviour = new Behaviour(netlist, new DiagramTable());
            var (space, table) = (behaviour.Space, behaviour.Space.Table);
            foreach (var move in behaviour.Transitions)
            {
                var left = table.And(space.Domain, !behaviour.Shorted);
                for (var i = 0; i < 6 && space.First(left) is { } state; i++)
                {
                    if (behaviour.ReadCoil(move, state) is not { } reading)
                        break;
                    sets++;
                    var alike = table.Except(table.And(reading.Condition, space.Domain), space.Of(state));
                    for (var j = 0; j < 12 && space.First(alike) is { } other; j++)
                    {
                        compared++;
                        var volts = behaviour.ReadCoil(move, other)!.Volts;
                        volts.Unknown.Should().Be(reading.Volts.Unknown, $"panel {number}");
                        if (volts.IsKnown)
                        {
                            volts.Low.Should().BeApproximately(reading.Volts.Low, 0.01, $"panel {number}");
                            volts.High.Should().BeApproximately(reading.Volts.High, 0.01, $"panel {number}");
                        }
                        alike = table.Except(alike, space.Of(other));
                    }
                    left = table.Except(left, reading.Condition);
                }
            }
        }
        sets.Should().BeGreaterThan(500);
        compared.Should().BeGreaterThan(1000);
    }

    /// <summary>Every load of some ohms, and here and there a load in the place of a contact or wire.</summary>
    private static Netlist WithOhms(Netlist netlist, Random random) =>
        netlist with
        {
            Variables = [.. netlist.Variables.Select(v => v.Kind == VariableKind.Armature ? Rated(v) : v)],
            Elements =
            [
                .. netlist.Elements.Select(e =>
                    e.Type is ElementType.Load or ElementType.Series || random.Next(5) == 0
                        ? e with
                        {
                            Type = ElementType.Load,
                            Ohms = new(100 * Math.Pow(10, random.NextDouble()), 0),
                        }
                        : e
                ),
            ],
        };

    /// <summary>The moves that a coil rated at its control voltage has.</summary>
    private static Variable Rated(Variable armature)
    {
        var rated = armature.Moves.Select(m => m.When).OfType<Energised>().First().Low / 0.85;
        var (a, b) = (armature.Coil[0], armature.Coil[1]);
        var must = new Energised(a, b, Grade.Solid, 0.85 * rated, 1.1 * rated);
        var may = new Energised(a, b, Grade.Loose, 0.5 * rated, null);
        var hold = new Energised(a, b, Grade.Loose, 0.2 * rated, null);
        return armature with
        {
            Moves =
            [
                new("out", "in", Mover.Settle, must, may),
                new("in", "out", Mover.Settle, Expression.Negate(hold), Expression.Negate(must)),
            ],
        };
    }

    private static Netlist Panel(Ohms lamp) =>
        new()
        {
            Panel = "lamp and coil",
            Earth = "PE",
            Nets = ["PE", "p", "m", "x", "y"],
            Supplies =
            [
                new Supply
                {
                    Name = "G",
                    Group = "G",
                    Direct = true,
                    Conductors =
                    [
                        new("plus", "p", 24, 0, Polarity.Plus, Expression.True),
                        new("minus", "m", 0, 0, Polarity.Minus, Expression.True),
                    ],
                },
            ],
            Variables =
            [
                new Variable
                {
                    Name = "S1",
                    Device = "S1",
                    Kind = VariableKind.Position,
                    Values = ["open", "closed"],
                    Rest = "open",
                    Moves = [new("open", "closed", Mover.Operator, Expression.True, Expression.False)],
                },
                new Variable
                {
                    Name = "K1",
                    Device = "K1",
                    Kind = VariableKind.Armature,
                    Values = ["out", "in"],
                    Rest = "out",
                    Coil = ["y", "m"],
                    Moves =
                    [
                        new("out", "in", Mover.Settle, Must, May),
                        new("in", "out", Mover.Settle, Expression.Negate(Hold), Expression.Negate(Must)),
                    ],
                },
            ],
            Elements =
            [
                Of("S1", ElementType.Contact, "p", "x") with
                {
                    Closed = new VariableIs("S1", "closed"),
                },
                Of("P1", ElementType.Load, "x", "y") with
                {
                    Ohms = lamp,
                },
                Of("K1", ElementType.Load, "y", "m") with
                {
                    Ohms = new(100, 0),
                },
            ],
        };

    private static Energised Must => new("y", "m", Grade.Solid, 0.85 * 24, 1.10 * 24);

    private static Energised May => new("y", "m", Grade.Loose, 0.50 * 24, null);

    private static Energised Hold => new("y", "m", Grade.Loose, 0.10 * 24, null);

    private static Element Of(string id, ElementType type, string a, string b) =>
        new()
        {
            Id = id,
            Device = "",
            Type = type,
            A = a,
            B = b,
        };
}
