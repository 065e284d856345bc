using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>The wires of a power sheet, one figure a net, with what is lettered at their ports.</summary>
internal sealed class PowerWires
{
    private const double Below = 2;
    private const double ArrowLength = 2.5;
    private const double TieReach = 2.5;

    private readonly PowerCircuit circuit;
    private readonly Board board;
    private readonly Grid grid;
    private readonly IReadOnlyList<Standee> standees;
    private readonly IReadOnlyList<Stub> stubs;
    private readonly Shown shown;
    private readonly Dictionary<Terminal, string> netOf;

    public PowerWires(
        PowerCircuit circuit,
        Board board,
        Grid grid,
        IReadOnlyList<Standee> standees,
        IReadOnlyList<Stub> stubs,
        Shown shown
    )
    {
        (this.circuit, this.board, this.grid) = (circuit, board, grid);
        (this.standees, this.stubs, this.shown) = (standees, stubs, shown);
        netOf = circuit.Panel.Nets.SelectMany(n => n.Terminals.Select(t => (t, n.Name))).ToDictionary();
    }

    public IEnumerable<Figure> Figures()
    {
        var pieces = circuit.Joints.Select(_ => new List<Piece>()).ToList();
        Upright(pieces);
        Level(pieces);
        var byNet = Enumerable
            .Range(0, pieces.Count)
            .Where(j => pieces[j].Count > 0)
            .GroupBy(j => NetsOf(j)[0]);
        foreach (var net in byNet)
            yield return Wire(net.Key, [.. net], pieces);
        foreach (var stub in stubs)
        foreach (var figure in Letters(stub))
            yield return figure;
    }

    private IReadOnlyList<string> NetsOf(int joint) =>
        [.. circuit.Joints[joint].SelectMany(p => p.Terminals).Select(t => netOf[t]).Distinct()];

    private Figure Wire(string net, IReadOnlyList<int> joints, List<List<Piece>> pieces)
    {
        var terminals = joints
            .SelectMany(j => circuit.Joints[j])
            .SelectMany(p => p.Terminals)
            .Distinct()
            .ToList();
        var nets = joints.SelectMany(NetsOf).Distinct().ToList();
        return new Figure
        {
            Kind = FigureKind.Wire,
            Title = $"wire {string.Join(", ", nets)}: {string.Join(", ", terminals)}",
            Net = net,
            Terminals = [.. terminals.Select(t => t.ToString())],
            Tone = nets.Select(shown.ToneOf).MinBy(Rank),
            Shapes = [.. joints.SelectMany(j => Piece.Shapes(pieces[j]))],
        };
    }

    /// <summary>Several nets drawn as one line look like the one that is most of a danger.</summary>
    private static int Rank(Tone tone) =>
        tone switch
        {
            Tone.Marked => 0,
            Tone.SolidlyLive => 1,
            Tone.LooselyLive => 2,
            Tone.Dead => 3,
            _ => 4,
        };

    private void Upright(List<List<Piece>> pieces)
    {
        var trunkOf = new Dictionary<Riser, Trunk>();
        foreach (var trunk in board.Plan.Trunks)
        foreach (var riser in trunk.Risers)
            trunkOf[riser] = trunk;
        foreach (var riser in board.Plan.Risers)
        {
            var x = grid.XOf(riser);
            if (riser.IsStraight)
                pieces[riser.Joint].Add(Piece.Upright(x, LevelOf(riser.Ports[0]), LevelOf(riser.Ports[1])));
            else if (trunkOf.TryGetValue(riser, out var trunk))
                pieces[riser.Joint].Add(Piece.Upright(x, LevelOf(riser.Ports[0]), grid.YOf(trunk)));
        }
        for (var i = 0; i < board.Plan.Links.Count; i++)
        {
            var (upper, lower) = (board.Plan.Links[i].Upper, board.Plan.Links[i].Lower);
            pieces[upper.Joint].Add(Piece.Upright(grid.XOfLink(i), grid.YOf(upper), grid.YOf(lower)));
        }
        Ends(pieces);
    }

    /// <summary>Wires that lead from a port to a sign alone.</summary>
    private void Ends(List<List<Piece>> pieces)
    {
        var jointOf = circuit.Joints.SelectMany((j, i) => j.Select(p => (p.Index, i))).ToDictionary();
        foreach (var stub in stubs.Where(s => s is { Ends: false, Earthed: true }))
        {
            var (x, y, aside) = (XOf(stub.Port), StubEnd(stub), XOf(stub.Port) - EarthMark.Aside);
            var turn = y - (stub.Port.Above ? -ArrowLength : ArrowLength);
            pieces[jointOf[stub.Port.Index]].Add(Piece.Level(turn, aside, x));
            pieces[jointOf[stub.Port.Index]].Add(Piece.Upright(aside, turn, y));
        }
        foreach (var stub in stubs.Where(s => s.Tied))
            pieces[jointOf[stub.Port.Index]]
                .Add(Piece.Level(StubEnd(stub), XOf(stub.Port) - TieReach, XOf(stub.Port) + TieReach));
        foreach (var stub in stubs.Where(s => s.Ends))
            pieces[jointOf[stub.Port.Index]]
                .Add(Piece.Upright(XOf(stub.Port), LevelOf(stub.Port), StubEnd(stub)));
    }

    private void Level(List<List<Piece>> pieces)
    {
        foreach (var trunk in board.Plan.Trunks)
        {
            var xs = trunk.Risers.Select(grid.XOf).ToList();
            for (var i = 0; i < board.Plan.Links.Count; i++)
                if (board.Plan.Links[i].Upper == trunk || board.Plan.Links[i].Lower == trunk)
                    xs.Add(grid.XOfLink(i));
            if (xs.Max() > xs.Min())
                pieces[trunk.Joint].Add(Piece.Level(grid.YOf(trunk), xs.Min(), xs.Max()));
        }
    }

    private double XOf(Port port) =>
        grid.OriginOf(circuit.LaneOf(port.Block)) + port.Slot * standees[port.Block].Pitch;

    private double LevelOf(Port port)
    {
        var standee = standees[port.Block];
        var y = grid.PortLevel(circuit.Rows[port.Block]);
        return port.Above ? y : y + standee.Symbol.Height;
    }

    private double StubEnd(Stub stub) =>
        LevelOf(stub.Port) + (stub.Port.Above ? -1 : 1) * (stub.Height - Below - ArrowLength);

    private IEnumerable<Figure> Letters(Stub stub)
    {
        var (x, y) = (XOf(stub.Port), LevelOf(stub.Port));
        var down = stub.Port.Above ? -1 : 1;
        var kind = stub.GoesOn ? FigureKind.Reference : FigureKind.Label;
        if (stub.Text.Length > 0)
        {
            var lower = stub.Port.Above
                ? y - Below
                : y + LetterWidths.Of(stub.Text, Stub.TextSize, false) + Below;
            yield return Say(
                stub,
                [new Lettering(new(x - 1.75, lower), stub.Text, Stub.TextSize, Upwards: true)],
                kind
            );
        }
        if (stub is { GoesOn: true, Ends: true, Earthed: false })
            yield return Say(stub, Arrow(x, StubEnd(stub), down), kind);
        if (stub.Earthed)
            yield return Say(
                stub,
                EarthMark.Of(stub.Ends ? x : x - EarthMark.Aside, StubEnd(stub), down),
                FigureKind.Reference
            );
    }

    private static Figure Say(Stub stub, IReadOnlyList<Shape> shapes, FigureKind kind) =>
        new()
        {
            Kind = kind,
            Title = stub.Title,
            Net = stub.Net,
            Device = stub.Port.Terminals[0].Device,
            Shapes = shapes,
        };

    /// <param name="y">Where the wire ends and the arrow begins.</param>
    private static IReadOnlyList<Shape> Arrow(double x, double y, int down) =>
        [
            new Polyline([new(x, y), new(x, y + down * ArrowLength)], Ink.Line),
            new Polyline([new(x - 1, y), new(x, y + down * ArrowLength), new(x + 1, y)], Ink.Line),
        ];
}
