using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Power;
using CsCheck;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings.Power;

public class LaneOrderTests
{
    public static TheoryData<string> Samples()
    {
        var data = new TheoryData<string>();
        foreach (var sample in Tests.Samples.Panels)
            data.Add(sample.Name);
        return data;
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void No_order_of_the_lanes_of_a_sample_crosses_less(string name)
    {
        var circuit = CircuitOf(Tests.Samples.Panels.Single(s => s.Name == name).Text);
        circuit.Lanes.Members.Count.Should().BeLessThanOrEqualTo(LaneOrder.Exhaustive);
        circuit.Arranged().Crossings.Should().Be(Fewest(circuit));
    }

    [Fact]
    public void No_order_of_up_to_six_random_lanes_crosses_less()
    {
        var tried = 0;
        RandomPower.Texts.Sample(
            text =>
            {
                var circuit = CircuitOf(text);
                if (circuit.Lanes.Members.Count > 6 || HasRing(circuit.Lanes))
                    return;
                Interlocked.Increment(ref tried);
                circuit.Arranged().Crossings.Should().Be(Fewest(circuit));
            },
            iter: 300
        );
        tried.Should().BeGreaterThan(50);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Crossings_are_those_on_paper(string name)
    {
        var circuit = CircuitOf(Tests.Samples.Panels.Single(s => s.Name == name).Text);
        var board = circuit.Arranged();
        var part = PowerSheet.Of(circuit, board, new("IEC", false, Shown.Wiring), (_, _) => "elsewhere");
        OnPaper(new PlacedSheet(1, "power", part.Width, part.Height, part.Figures))
            .Should()
            .Be(board.Crossings);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Lanes_are_straight(string name)
    {
        var circuit = CircuitOf(Tests.Samples.Panels.Single(s => s.Name == name).Text);
        var board = circuit.Arranged();
        var part = PowerSheet.Of(circuit, board, new("IEC", false, Shown.Wiring), (_, _) => "elsewhere");
        foreach (var net in circuit.Joints.Where(j => j.Count == 2 && RunsDown(j, circuit)))
            part.Figures.Single(f =>
                    f.Kind == FigureKind.Wire && net.All(p => f.Terminals.Contains(p.Terminals[0].ToString()))
                )
                .Shapes.Should()
                .OnlyContain(s => s.Bounds.Width == 0, "a wire down a lane has no bend");
    }

    /// <summary>From one device of a lane to the next, slot by slot.</summary>
    private static bool RunsDown(IReadOnlyList<Port> joint, PowerCircuit circuit)
    {
        var (upper, lower) = (joint[0], joint[1]);
        return !joint[0].Above
            && joint[1].Above
            && joint[0].Slot == joint[1].Slot
            && circuit
                .Lanes.Members[circuit.LaneOf(upper.Block)]
                .SkipWhile(b => b != upper.Block)
                .ElementAtOrDefault(1) == lower.Block
            && joint
                .SelectMany(p => p.Terminals)
                .All(t => circuit.Panel.Nets.Single(n => n.Terminals.Contains(t)).Terminals.Count == 2);
    }

    /// <summary>Over every permutation of the lanes in which ways stand side by side in declared order.</summary>
    private static int Fewest(PowerCircuit circuit)
    {
        var plan = RoutePlan.Of(Risers.Of(circuit.Blocks, circuit.Joints, circuit.Rows, circuit.Lanes));
        return Permutations([.. Enumerable.Range(0, circuit.Lanes.Members.Count)])
            .Where(o =>
                circuit.Lanes.Ordered.All(p => p.Left == p.Right || o.IndexOf(p.Left) < o.IndexOf(p.Right))
            )
            .Where(circuit.Lanes.AreSideBySide)
            .Min(o => new Board(plan, o, circuit.RowCount + 1).Crossings);
    }

    private static IEnumerable<List<int>> Permutations(List<int> of) =>
        of.Count == 0
            ?
            [
                [],
            ]
            : of.SelectMany(first =>
                Permutations([.. of.Where(o => o != first)]).Select(rest => (List<int>)[first, .. rest])
            );

    /// <summary>Pairs that cannot all be kept: then declared order alone decides.</summary>
    private static bool HasRing(Lanes lanes) =>
        !Permutations([.. Enumerable.Range(0, lanes.Members.Count)])
            .Any(o =>
                lanes.Ordered.All(p => p.Left == p.Right || o.IndexOf(p.Left) < o.IndexOf(p.Right))
                && lanes.AreSideBySide(o)
            );

    private static int OnPaper(PlacedSheet sheet)
    {
        var lines = Quality.Segments(sheet).ToList();
        return lines
            .Where(l => l.A.Y == l.B.Y)
            .Sum(level =>
                lines.Count(upright =>
                    upright.A.X == upright.B.X
                    && upright.Wire.Net != level.Wire.Net
                    && Between(upright.A.X, level.A.X, level.B.X)
                    && Between(level.A.Y, upright.A.Y, upright.B.Y)
                )
            );
    }

    private static bool Between(double value, double a, double b) =>
        Math.Min(a, b) < value && value < Math.Max(a, b);

    private static PowerCircuit CircuitOf(string text)
    {
        var panel = PanelBinder
            .Bind(PanelParser.Parse(new SourceText("test.panel", text)), KindLibrary.Standard)
            .Panel;
        return PowerCircuit.Of(panel, Division.Of(panel), false, Shown.Wiring);
    }
}
