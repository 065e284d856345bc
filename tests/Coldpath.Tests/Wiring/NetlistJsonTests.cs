using System.Text.Json;
using System.Text.Json.Nodes;
using Coldpath.Tests.Circuit;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Tests.Sheets;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Wiring;

public class NetlistJsonTests
{
    [Fact]
    public void Every_netlist_is_valid_against_the_schema()
    {
        foreach (var number in Enumerable.Range(400_000, 200))
        {
            var netlist = RandomPanels.Panel(number);
            netlist = netlist with
            {
                Intents = [.. new RandomIntents(netlist, new System.Random(number)).All()],
            };
            IsValid(NetlistJson.ToText(netlist)).Should().BeTrue($"of panel {number}");
        }
        IsValid(NetlistJson.ToText(Everything)).Should().BeTrue();
    }

    [Fact]
    public void The_schema_refuses_what_is_no_netlist()
    {
        var text = NetlistJson.ToText(Everything);

        IsValid(text.Replace("\"schema\":1", "\"schema\":2", StringComparison.Ordinal)).Should().BeFalse();
        IsValid(text.Replace("\"earth\":", "\"ground\":", StringComparison.Ordinal)).Should().BeFalse();
        IsValid(text.Replace("\"by\":\"settle\"", "\"by\":\"magic\"", StringComparison.Ordinal))
            .Should()
            .BeFalse();
        IsValid(
                text.Replace(
                    "\"closed\":{\"var\":\"K1\",\"is\":\"in\"}",
                    "\"closed\":{\"live\":\"n1\"}",
                    StringComparison.Ordinal
                )
            )
            .Should()
            .BeFalse("a guard uses variables only");
    }

    [Fact]
    public void Each_part_is_written_as_defined()
    {
        using var json = JsonDocument.Parse(NetlistJson.ToText(Everything, indented: true));
        var root = json.RootElement;

        root.GetProperty("powered")[0].GetString().Should().Be("K1=in");
        root.GetProperty("supplies")[0]
            .GetProperty("store")
            .GetProperty("discharge")
            .ValueKind.Should()
            .Be(JsonValueKind.Null);
        root.GetProperty("couplings")[0].GetProperty("from").GetString().Should().Be("first");
        root.GetProperty("points").GetProperty("Q1:1").GetProperty("net").GetString().Should().Be("n1");
        var move = root.GetProperty("variables")[0].GetProperty("moves")[0];
        move.GetProperty("may").GetProperty("energised")[1].GetString().Should().Be("n2");
        move.GetProperty("may").GetProperty("volts")[1].ValueKind.Should().Be(JsonValueKind.Null);
        root.GetProperty("variables")[1].GetProperty("class").GetString().Should().Be("contact");
        root.GetProperty("elements")[0].GetProperty("leaks").GetBoolean().Should().BeFalse();
        var device = root.GetProperty("devices")[0];
        device.GetProperty("opensOnShort")[0].GetProperty("breaks_kA").GetDouble().Should().Be(18);
        device.GetProperty("isolates").GetProperty("variable").ValueKind.Should().Be(JsonValueKind.Null);
        root.GetProperty("intents")[0].GetProperty("by").GetString().Should().Be("K1=out");
        root.GetProperty("intents")[1].GetProperty("by").GetArrayLength().Should().Be(2);
    }

    private static Netlist Everything { get; } =
        new()
        {
            Panel = "P1",
            Rules = "NEC",
            Frequency = 60,
            Earth = "PE",
            Nets = ["PE", "n1", "n2", "n3"],
            Supplies = [Supply("MAINS") with { Store = new("K1", null), ExtraLow = true }],
            Converters =
            [
                new()
                {
                    Name = "T1",
                    Inputs = ["n1", "n2"],
                    Windings =
                    [
                        ["n1", "n2"],
                        ["n3", "PE"],
                    ],
                    When = new Fed("n1", "n2", "n3", PhaseOrder.Forward, Grade.Load),
                    Output = Supply("T1"),
                },
            ],
            Couplings =
            [
                new(
                    "M1",
                    [
                        ["n1"],
                        ["n2"],
                    ],
                    FirstDrives: true
                ),
            ],
            Variables =
            [
                new()
                {
                    Name = "K1",
                    Device = "K1",
                    Kind = VariableKind.Armature,
                    Values = ["out", "in"],
                    Rest = "out",
                    Coil = ["n1", "n2"],
                    Moves =
                    [
                        new(
                            "out",
                            "in",
                            Mover.Settle,
                            Predicates,
                            new Energised("n1", "n2", Grade.Loose, 50, null)
                        ),
                    ],
                },
                new()
                {
                    Name = "K1.weld",
                    Device = "K1",
                    Kind = VariableKind.Failure,
                    Class = FailureClass.Contact,
                    Values = ["no", "yes"],
                    Rest = "no",
                },
            ],
            Powered = [new("K1", "in")],
            Elements =
            [
                new()
                {
                    Id = "K1.1-2",
                    Device = "K1",
                    Pole = 1,
                    Power = true,
                    A = "n1",
                    B = "n2",
                    Type = ElementType.Semiconductor,
                    Closed = new VariableIs("K1", "in"),
                    Leaks = Expression.False,
                    Ohms = new(0.001, 0),
                    Size = "6 AWG",
                    Metres = 3,
                },
            ],
            Devices =
            [
                new()
                {
                    Tag = "F1",
                    Panel = "P1",
                    Kind = "fuse",
                    Place = "incoming",
                    Use = ControlUse.Mode,
                    Protects = [new("overload", ["K1.1-2"], "K1")],
                    Isolates = new(null, ["K1.1-2"], true, false, 2),
                    OpensOnShort = [new("K1", "out", ["K1.1-2"], 18), new("K1", "out", ["K1.1-2"], null)],
                    Ratings = [new("current", "175 A")],
                    Span = [12, 1, 12, 40],
                },
            ],
            Loads =
            [
                new()
                {
                    Name = "M1",
                    Elements = ["K1.1-2"],
                    Terminals = ["n1", "n2", "n3"],
                    Modes =
                    [
                        new(
                            "delta",
                            1780,
                            ["n1", "n2", "n3"],
                            [new("n1", "n2")],
                            [new("n2", "n3")],
                            Turning.Reverse
                        ),
                    ],
                },
            ],
            Constraints = [new("interlock", "mechanical", new Not(new VariableIs("K1", "in")))],
            Points = [new("Q1:1", "n1", "Q1", "incoming"), new("X1", "n2", null, null)],
            Intents =
            [
                new()
                {
                    Form = IntentForm.Stops,
                    Of = "M1",
                    By = [new("K1", "out")],
                    AtOnce = true,
                    Span = [1, 1, 1, 9],
                },
                new()
                {
                    Form = IntentForm.Stops,
                    Of = "M1",
                    By = [new("K1", "out"), new("K1", "in")],
                },
                new() { Form = IntentForm.Never, When = new Quiet() },
            ],
            Assumed = ["the panel is as drawn"],
        };

    private static Expression Predicates =>
        Expression.AllOf(
            Expression.AnyOf(new Carries("K1.1-2"), new Closed("K1.1-2")),
            new Not(new SinglePhased("n1", "n2", "n3")),
            new Joined("n1", "n2"),
            new Live("n1"),
            new Runs("M1", Turning.Any),
            new InShort("MAINS"),
            new Energised("n1", "n2", Grade.Solid, 102, 132)
        );

    private static Supply Supply(string name) =>
        new()
        {
            Name = name,
            Direct = true,
            Group = "g1",
            Conductors =
            [
                new("+", "n1", 24, 0, Polarity.Plus, Expression.True),
                new("-", "n2", 0, 0, Polarity.Minus, Expression.True),
            ],
        };

    private static bool IsValid(string json) => Schemas.Fits(JsonNode.Parse(json)!, "netlist.schema.json");
}
