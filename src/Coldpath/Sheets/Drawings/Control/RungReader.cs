using System.Globalization;
using Coldpath.Findings;
using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Rungs from chains: conductor by conductor, with the knots between their pieces.</summary>
internal sealed class RungReader
{
    private readonly Dictionary<string, PlacedDevice> devices;
    private readonly PanelWires wires;
    private readonly Knots knots;

    private RungReader(Panel panel, PanelWires wires, Knots knots)
    {
        devices = panel
            .Devices.GroupBy(d => d.Tag)
            .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        (this.wires, this.knots) = (wires, knots);
    }

    /// <summary>In the order of the text; a chain of several conductors gives a rung for each.</summary>
    public static IReadOnlyList<Rung> Read(
        Panel panel,
        IReadOnlyList<Chain> chains,
        PanelWires wires,
        Knots knots
    )
    {
        var reader = new RungReader(panel, wires, knots);
        var rungs = new List<Rung>();
        var unnumbered = 0;
        foreach (var chain in chains)
        {
            var number = chain.Rung ?? $"R{(++unnumbered).ToString(CultureInfo.InvariantCulture)}";
            var root = Earthing.Of(Factoring.Of(chain.Root));
            var width = chain.Passages.Select(p => Math.Max(p.Left.Count, p.Right.Count)).Append(1).Max();
            for (var i = 0; i < width; i++)
                rungs.Add(reader.Rung(rungs.Count, i == 0 ? number : $"{number}/{i + 1}", chain, root, i));
        }
        return rungs;
    }

    private Rung Rung(int index, string number, Chain chain, ChainPiece root, int conductor)
    {
        var piece = Piece(root, conductor, knots.New(), knots.New(), true, true);
        var pieces = piece is RungRow row ? row.Pieces : [piece];
        var start = pieces.Count > 1 && BeginsHere(pieces[0]) ? pieces[0] : null;
        var end = pieces.Count > 1 && EndsHere(pieces[^1]) ? pieces[^1] : null;
        return new(
            index,
            number,
            chain.Span,
            start,
            [.. pieces.Skip(start is null ? 0 : 1).SkipLast(end is null ? 0 : 1)],
            end
        );
    }

    private static bool BeginsHere(RungPiece piece) =>
        piece is RungNode or RungEarth or RungPart { Left: null };

    private static bool EndsHere(RungPiece piece) =>
        piece is RungNode or RungEarth or RungPart { Right: null };

    private RungPiece Piece(ChainPiece piece, int conductor, int into, int outOf, bool begins, bool ends) =>
        piece switch
        {
            InSeries { Pieces.Count: > 0 } series => Row(series, conductor, into, outOf, begins, ends),
            InParallel { Branches.Count: > 0 } group => Fork(group, conductor, into, outOf, begins, ends),
            Passage passage when devices.TryGetValue(passage.Device, out var device) => Part(
                passage,
                device,
                conductor,
                into,
                outOf
            ),
            NodeStop { Name: PanelWires.Earth } => Earth(piece.Span, into, outOf, begins, ends),
            NodeStop node => Node(node.Name, node, into, outOf),
            Passage passage => Node(passage.Device, passage, into, outOf),
            _ => Node("", piece, into, outOf),
        };

    private RungRow Row(InSeries series, int conductor, int into, int outOf, bool begins, bool ends)
    {
        var steps = series.Pieces;
        var pieces = new List<RungPiece>();
        var (from, starts) = (into, begins);
        for (var i = 0; i < steps.Count; i++)
        {
            var isLast = i == steps.Count - 1;
            var to = isLast ? outOf : knots.New();
            // Each branch of a group behind the earth begins there for itself.
            var breaks = !isLast && Earthing.IsEarth(steps[i]) && steps[i + 1] is InParallel;
            if (!breaks || !starts)
                pieces.Add(Piece(steps[i], conductor, from, to, starts, breaks || (ends && isLast)));
            (from, starts) = (to, breaks);
        }
        return new(pieces, into, outOf);
    }

    private RungFork Fork(InParallel group, int conductor, int into, int outOf, bool begins, bool ends) =>
        new(
            [
                .. group.Branches.Select(b =>
                    Piece(b, conductor, begins ? knots.New() : into, ends ? knots.New() : outOf, begins, ends)
                ),
            ],
            into,
            outOf,
            begins,
            ends
        );

    private static RungPiece Earth(Span span, int into, int outOf, bool begins, bool ends)
    {
        var (end, begin) = (new RungEarth(span, into, false), new RungEarth(span, outOf, true));
        return begins ? begin
            : ends ? end
            : new RungRow([end, begin], into, outOf);
    }

    private RungNode Node(string name, ChainPiece piece, int into, int outOf)
    {
        knots.Join(into, outOf);
        knots.Name(into, wires.NetOf(name));
        return new(name, piece.Span, into);
    }

    private RungPart Part(Passage passage, PlacedDevice device, int conductor, int into, int outOf)
    {
        var left = passage.Left.ElementAtOrDefault(conductor);
        var right = passage.Right.ElementAtOrDefault(conductor);
        if (left == right || left is null || right is null)
            knots.Join(into, outOf);
        if (left is not null)
            knots.Name(into, wires.NetOf(new Terminal(device.Tag, left)));
        if (right is not null)
            knots.Name(outOf, wires.NetOf(new Terminal(device.Tag, right)));
        return new(device, passage.Part, passage.Contact, left, right, passage.Span, into, outOf);
    }
}
