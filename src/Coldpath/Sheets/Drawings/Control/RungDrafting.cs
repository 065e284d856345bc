using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Makes rows and forks of cells, folded where they are wider than they may be.</summary>
internal sealed class RungDrafting
{
    private readonly LadderFacts facts;
    private readonly PartCells parts;
    private readonly NetCells nets;
    private readonly NetNames names;
    private readonly Dictionary<RungPiece, LaidCell> made = new(ReferenceEqualityComparer.Instance);
    private int folds;

    /// <summary>Room for the flag at a fold.</summary>
    private const double FlagWidth = 9;

    public RungDrafting(LadderFacts facts)
    {
        this.facts = facts;
        (parts, nets, names) = (new(facts), new(facts), new(facts));
    }

    /// <summary>What a piece may take of a row's width, so that flags find room on both of its sides.</summary>
    public static double Inside(double limit) => limit - (2 * FlagWidth);

    /// <summary>What a rung begins or ends at, where neither a rail nor a node drawn upright does it.</summary>
    public Laid End(Rung rung, RungPiece piece, bool begins) => Piece(rung, piece, 0, begins, !begins);

    /// <summary>The name of a node over a wire that goes on to it.</summary>
    public Laid Over(RungNode node) => nets.Node(node, begins: false, ends: false);

    /// <summary>A part that stands apart, with flags for the nets that it lies on.</summary>
    public LaidRow Apart(Rung rung)
    {
        var part = (RungPart)rung.Body[0];
        return LaidRow.Packed(
            new[]
            {
                Lead(part.In, true),
                Piece(rung, part, 0, false, false),
                part.Right is null ? null : Lead(part.Out, false),
            }.OfType<Laid>()
        );

        LaidCell? Lead(int knot, bool begins)
        {
            var net = facts.Knots.NetOf(knot);
            var isAlone = facts.Wires.TerminalsOf(net).Count < 2 && facts.Islands.Elsewhere(knot).Count == 0;
            return isAlone && facts.Wires.IsBonded(net) ? Flags.Earth(rung.Span, knot, begins)
                : isAlone && facts.Wires.NameOf(net) is null ? null
                : nets.Lead(facts.Wires.NameOf(net) ?? net, knot, begins);
        }
    }

    /// <summary>The pieces of a rung's body, none wider than the limit where that can be helped.</summary>
    /// <returns>What is laid, and whether it holds a load.</returns>
    public IEnumerable<(Laid Laid, bool HoldsLoad)> Body(Rung rung, double limit)
    {
        if (rung.Start is { } start && Named(start.Out, start) is { } name)
            yield return (name, false);
        for (var i = 0; i < rung.Body.Count; i++)
        {
            var (begins, ends) = (rung.Start is null && i == 0, rung.End is null && i == rung.Body.Count - 1);
            yield return (Piece(rung, rung.Body[i], limit, begins, ends), HoldsLoad(rung.Body[i]));
            if (Named(rung.Body[i].Out, rung.Body[i]) is { } behind)
                yield return (behind, false);
        }
    }

    /// <summary>Whether a load or a coil stands in it.</summary>
    private bool HoldsLoad(RungPiece piece) =>
        Rung.LeavesIn(piece)
            .OfType<RungPart>()
            .Any(p => facts.Read(p).Role is ControlRole.Coil or ControlRole.Load);

    /// <summary>Rows no wider than the limit, but for single pieces that are; flags lead from one to the next.</summary>
    public IReadOnlyList<IReadOnlyList<Laid>> Rows(IReadOnlyList<Laid> pieces, double limit)
    {
        var rows = new List<List<Laid>> { new() };
        var (width, held) = (0.0, 0);
        for (var i = 0; i < pieces.Count; i++)
        {
            var isLast = i == pieces.Count - 1;
            var needed = pieces[i].Width + (isLast ? 0 : FlagWidth);
            if (width + needed > limit && held > 0 && CanFold(pieces[i - 1], pieces[i]))
            {
                var letter = Letter(folds++);
                rows[^1].Add(nets.Fold(letter, pieces[i].Into, begins: false));
                rows.Add([nets.Fold(letter, pieces[i].Into, begins: true)]);
                (width, held) = (FlagWidth, 0);
            }
            rows[^1].Add(pieces[i]);
            width += pieces[i].Width;
            held++;
        }
        return rows;
    }

    private static bool CanFold(Laid before, Laid after) => before.Out is not null && after.In is not null;

    private IEnumerable<Laid> Pieces(
        Rung rung,
        IReadOnlyList<RungPiece> pieces,
        double limit,
        bool begins,
        bool ends
    )
    {
        for (var i = 0; i < pieces.Count; i++)
        {
            yield return Piece(rung, pieces[i], limit, begins && i == 0, ends && i == pieces.Count - 1);
            if (Named(pieces[i].Out, pieces[i]) is { } name)
                yield return name;
        }
    }

    private Laid Piece(Rung rung, RungPiece piece, double limit, bool begins, bool ends) =>
        piece switch
        {
            RungPart part => Made(part, () => parts.Of(rung, part)),
            RungNode node => Made(node, () => nets.Node(node, begins, ends)),
            RungEarth earth => Made(earth, () => Flags.Earth(earth.Span, earth.At, earth.Begins)),
            RungFork fork => Fork(rung, fork, limit),
            RungRow row => Row(rung, row, limit, begins, ends),
            _ => throw new ArgumentException("unknown piece", nameof(piece)),
        };

    private LaidCell Made(RungPiece piece, Func<LaidCell> make)
    {
        if (!made.TryGetValue(piece, out var cell))
            made.Add(piece, cell = make());
        return cell;
    }

    private Laid Row(Rung rung, RungRow row, double limit, bool begins, bool ends)
    {
        var pieces = Pieces(rung, row.Pieces, Inside(limit), begins, ends).ToList();
        var rows = Rows(pieces, limit);
        return LaidRows.Of([.. rows.Select(LaidRow.Packed)], row.In, row.Out);
    }

    private LaidFork Fork(Rung rung, RungFork fork, double limit)
    {
        var inside = limit - (2 * LaidFork.Column);
        return LaidFork.Of(
            [.. fork.Branches.Select(b => Piece(rung, b, inside, fork.OpenIn, fork.OpenOut))],
            fork.In,
            fork.Out,
            fork.OpenIn,
            fork.OpenOut
        );
    }

    private LaidCell? Named(int knot, RungPiece before) =>
        names.AreBehind(before)
            ? nets.Name(facts.Wires.NameOf(facts.Knots.NetOf(knot)) ?? facts.Knots.NetOf(knot), knot)
            : null;

    /// <summary>A to Z, AA and so on.</summary>
    private static string Letter(int number) =>
        number < 26 ? $"{(char)('A' + number)}" : $"{Letter((number / 26) - 1)}{(char)('A' + (number % 26))}";
}
