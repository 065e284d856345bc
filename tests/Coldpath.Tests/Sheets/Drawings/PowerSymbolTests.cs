using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Symbols;
using Coldpath.Tests.Devices;
using Coldpath.Wiring;
using CsCheck;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

public class PowerSymbolTests
{
    public static TheoryData<string, string, bool, bool> Parts
    {
        get
        {
            var all = new TheoryData<string, string, bool, bool>();
            foreach (var line in StandardKindsTests.Lines)
            foreach (var rules in new[] { "IEC", "NEC" })
            foreach (var oneLine in new[] { false, true })
            foreach (var closed in new[] { false, true })
                all.Add(line, rules, oneLine, closed);
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Parts))]
    public void Every_port_is_met_and_all_is_tidy(string line, string rules, bool oneLine, bool closed)
    {
        if (SymbolParts.Power(SymbolParts.Device(line, rules), rules, oneLine, closed) is not { } part)
            return;
        var symbol = PowerSymbols.Of(part);
        foreach (var port in part.Ports)
            symbol.ShouldReach(new At(port.X, port.Above ? 0 : symbol.Height), $"{line} has {port}");
        symbol.ShouldBeTidy(line);
        symbol.LinkAt.X.Should().Be(symbol.Body.Left);
    }

    [Theory]
    [InlineData("contactor K1 140 A")]
    [InlineData("disconnect Q1 200 A")]
    [InlineData("breaker Q1 50 A")]
    [InlineData("fused disconnect Q1 100 A")]
    [InlineData("transfer switch TS1 100 A")]
    [InlineData("soft starter U1 124 A, control supply 120 V, internal bypass")]
    [InlineData("plug and socket X6 32 A")]
    [InlineData("manual motor starter Q1 9 A")]
    public void An_open_switch_and_a_closed_one_look_different(string line)
    {
        foreach (var rules in new[] { "IEC", "NEC" })
        foreach (var oneLine in new[] { false, true })
        {
            var device = SymbolParts.Device(line, rules);
            var open = PowerSymbols.Of(SymbolParts.Power(device, rules, oneLine, false)!);
            var closed = PowerSymbols.Of(SymbolParts.Power(device, rules, oneLine, true)!);
            Drawn(open).Should().NotBe(Drawn(closed), $"{line} under {rules}");
            open.Body.Height.Should().Be(closed.Body.Height);
        }
    }

    [Fact]
    public void A_blown_fuse_behind_a_closed_blade_is_not_drawn_as_an_open_blade()
    {
        var device = SymbolParts.Device("fused disconnect Q1 100 A, fuses 80 A", "IEC");
        var part = SymbolParts.Power(device, "IEC", true, false)!;
        Symbol With(bool blade, bool link) =>
            PowerSymbols.Of(part with { Poles = [part.Poles[0] with { Each = [blade, link] }] });
        var looks = new[] { With(false, false), With(false, true), With(true, false), With(true, true) };
        looks.Select(Drawn).Should().OnlyHaveUniqueItems();
    }

    [Fact]
    public void The_two_families_differ()
    {
        foreach (
            var line in new[]
            {
                "contactor K1 140 A",
                "breaker Q1 50 A",
                "fuse F1 2 A",
                "overload relay F1 5 A",
            }
        )
            Drawn(PowerSymbols.Of(SymbolParts.Power(SymbolParts.Device(line, "IEC"), "IEC", false, false)!))
                .Should()
                .NotBe(
                    Drawn(
                        PowerSymbols.Of(
                            SymbolParts.Power(SymbolParts.Device(line, "NEC"), "NEC", false, false)!
                        )
                    )
                );
    }

    [Fact]
    public void An_unknown_kind_is_a_box_with_its_terminals_and_what_lies_between()
    {
        var library = Declared.With(
            """
            kind arc chopper
              means   "own"
              letter  Q
              symbol  arc chopper
              for each pole [in1 - out1] [in2 - out2]
                thermal sense [line - *mid], power
                series  choke [*mid - load], power
              end
            end
            """
        );
        var device = SymbolParts.Device("arc chopper Z1", "IEC", library);
        var symbol = PowerSymbols.Of(SymbolParts.Power(device, "IEC", false, true)!);
        symbol
            .Shapes.OfType<Lettering>()
            .Select(l => l.Text)
            .Should()
            .Contain(["in1", "in2", "out1", "out2"]);
        symbol.Shapes.OfType<Polyline>().Should().Contain(l => l.Closed && l.Bounds.Width >= 20);
        symbol.ShouldBeTidy("arc chopper");
    }

    /// <summary>Each has a sign of its own, and is not the box that any unknown kind gets.</summary>
    [Theory]
    [InlineData("ups G2 230 V")]
    [InlineData("power supply G3 24 V DC")]
    [InlineData("dc motor M1 2 kW 180 V")]
    [InlineData("surge arrester F9 275 V")]
    [InlineData("braking resistor R3 40 ohm")]
    public void A_known_symbol_is_not_that_of_an_unknown_kind(string line)
    {
        var device = SymbolParts.Device(line, "IEC");
        var part = SymbolParts.Power(device, "IEC", false, true)!;
        var kind = device.Blueprint.Kind with { Symbol = "nothing known" };
        var unknown = device with { Blueprint = device.Blueprint with { Kind = kind } };

        Drawn(PowerSymbols.Of(part)).Should().NotBe(Drawn(PowerSymbols.Of(part with { Device = unknown })));
    }

    /// <summary>Ports where nobody would put them, poles that join what they like.</summary>
    [Fact]
    public void Nothing_throws_and_every_port_is_met()
    {
        var devices = StandardKindsTests.Lines.Select(l => SymbolParts.Device(l, "IEC")).ToArray();
        var port = Gen.Select(
            Gen.Int[0, 12],
            Gen.Bool,
            Gen.Int[1, 4],
            OneOf("1/L1", "N", "U", "a very long name indeed", "")
        );
        var ports = port.Array[1, 6];
        Gen.Select(
                Gen.Int[0, devices.Length - 1],
                ports,
                Gen.Int[0, 5].Array[0, 12],
                Gen.Bool,
                OneOf("IEC", "NEC")
            )
            .Sample(
                (device, places, ends, closed, rules) =>
                {
                    PowerPort[] all =
                    [
                        .. places.Select(p => new PowerPort(p.Item4, p.Item2, p.Item1 * 2.5, p.Item3)),
                    ];
                    var types = Enum.GetValues<ElementType>();
                    Pole[] poles =
                    [
                        .. ends.Chunk(2)
                            .Where(e => e.Length == 2)
                            .Select(e => new Pole(
                                e[0] % all.Length,
                                e[1] % all.Length,
                                [types[(e[0] * 7 + e[1]) % types.Length], types[e[1] % types.Length]],
                                closed
                            )),
                    ];
                    var symbol = PowerSymbols.Of(
                        new(devices[device], rules, all, poles, all.Any(p => p.Conductors > 1))
                    );
                    foreach (var p in all)
                        symbol.ShouldReach(new At(p.X, p.Above ? 0 : symbol.Height), $"{p}");
                    (symbol.Height % Pen.M).Should().Be(0);
                },
                iter: 3000,
                threads: 1
            );
    }

    private static Gen<string> OneOf(params string[] choices) =>
        Gen.Int[0, choices.Length - 1].Select(i => choices[i]);

    private static string Drawn(Symbol symbol) =>
        string.Join(
            '\n',
            symbol.Shapes.Select(s =>
                s is Polyline l ? $"{l.Ink} {string.Join(' ', l.Points)}" : s.ToString()
            )
        );
}
