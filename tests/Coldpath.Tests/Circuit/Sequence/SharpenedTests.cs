using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Phasors;
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

    /// <summary>Two loads in series share 24 V as their ohms are.</summary>
    [Fact, Trait("Set", "engine")]
    public void The_voltage_across_a_coil_is_its_part_of_the_whole()
    {
        var behaviour = new Behaviour(Panel(new Ohms(10, 0)), new DiagramTable());
        var sharpened = behaviour.Sharpened()!;
        var pull = behaviour.Transitions.Single(t => t.Cause == Cause.Settle && t.From == 0);
        var closed = behaviour.Space.Rest.With(0, 1);

        foreach (
            var reading in (CoilReading[])
                [
                    behaviour.ReadCoil(pull, closed)!,
                    behaviour.Read(pull, closed)!,
                    behaviour.ReadAcross("y", "m", 24, 12, closed),
                    sharpened.Read(
                        sharpened.Transitions.Single(t => t.Cause == Cause.Settle && t.From == 0),
                        closed
                    )!,
                ]
        )
        {
            reading.Volts.Low.Should().BeInRange(15, 21.83);
            reading.Volts.High.Should().BeInRange(21.81, 24);
            reading.Rated.Should().BeApproximately(24, 1e-6);
            reading.Needed.Should().BeApproximately(12, 1e-6);
        }
        behaviour.Read(pull, behaviour.Space.Rest).Should().BeNull("nothing is uncertain there");
        behaviour.ReadCoil(behaviour.Transitions[0], closed).Should().BeNull("a hand moves it");
        behaviour.JudgedVariables.Should().BeEmpty();
        behaviour.Unjudged.Should().BeSameAs(behaviour);
        sharpened.Unjudged.Should().BeSameAs(behaviour);
        sharpened.JudgedVariables.Should().Equal(1);
        behaviour.UncertainVariables.Should().Equal(1);
    }

    /// <summary>The same at a glance.</summary>
    [Fact, Trait("Set", "engine")]
    public void What_is_sure_stays_in_a_few_panels() =>
        Enumerable.Range(400_000, 60).Sum(n => Decided(n) is null ? 0 : 1).Should().BeGreaterThan(1);

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
        for (var number = 300_000; number < 300_500; number++)
            if (Decided(number) is { } some)
            {
                open++;
                decided += some ? 1 : 0;
            }
        open.Should().BeGreaterThan(20);
        decided.Should().BeGreaterThan(10);
    }

    /// <summary>Whether the solver decided something; null when nothing was open.</summary>
    private static bool? Decided(int number)
    {
        var netlist = WithOhms(RandomPanels.Panel(number, 256), new Random(number % 100_000));
        var behaviour = new Behaviour(netlist, new DiagramTable());
        if (!behaviour.RestsOnUncertain)
            return null;
        var sharpened = behaviour.Sharpened()!;
        var table = behaviour.Space.Table;
        foreach (var (before, after) in behaviour.Transitions.Zip(sharpened.Transitions))
        {
            table.Entails(before.Certain, after.Certain).Should().BeTrue();
            table.Entails(after.Certain, table.Or(before.Certain, before.Uncertain)).Should().BeTrue();
            table.Entails(after.Uncertain, before.Uncertain).Should().BeTrue();
            table.Meet(after.Certain, after.Uncertain).Should().BeFalse();
            after.Solved.Should().Be(table.Except(after.Certain, before.Certain));
        }
        return !ReferenceEquals(behaviour, sharpened);
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
