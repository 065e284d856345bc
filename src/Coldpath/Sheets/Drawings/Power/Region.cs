namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Neighbouring cells of a board whose devices stand in one place. Cells are counted with the strips between them: an
/// odd number across is a column, an even one a gap; an odd number down is a row, an even one a channel.
/// </summary>
/// <param name="Place">As the panel names it.</param>
/// <param name="First">Index of the block beside which the name is written.</param>
internal sealed record Region(string Place, int First, IReadOnlySet<(int Down, int Across)> Cells)
{
    private const double NameSize = 2.5;

    /// <summary>Outlines stand this far inside their cells.</summary>
    private const double Inset = 1;

    public static IReadOnlyList<Region> Of(PowerCircuit circuit, Board board)
    {
        var owners = Owners(circuit, board);
        var seen = new HashSet<(int, int)>();
        var regions = new List<Region>();
        foreach (var block in circuit.Blocks.OrderBy(b => circuit.Rows[b.Index]).ThenBy(b => Column(b.Index)))
        {
            var cell = (circuit.Rows[block.Index] * 2 + 1, Column(block.Index) * 2 + 1);
            if (owners.TryGetValue(cell, out var place) && !seen.Contains(cell))
            {
                var cells = Flood(cell, place, owners);
                seen.UnionWith(cells);
                regions.Add(new(place, block.Index, cells));
            }
        }
        return regions;

        int Column(int block) => board.Across.ColumnOf(circuit.LaneOf(block));
    }

    /// <summary>How much room the name beside each block takes; 0 where none is written.</summary>
    public static double[] NameWidths(IReadOnlyList<Region> regions, PowerCircuit circuit)
    {
        var widths = new double[circuit.Blocks.Count];
        foreach (var region in regions)
            widths[region.First] = LetterWidths.Of(region.Place, NameSize, false);
        return widths;
    }

    public IEnumerable<Figure> Figures(Grid grid, IReadOnlyList<Standee> standees, PowerCircuit circuit)
    {
        yield return new Figure
        {
            Kind = FigureKind.Outline,
            Title = $"in {Place}",
            Shapes =
            [
                .. Outline
                    .Of(Cells)
                    .Select(loop => new Polyline(
                        [.. loop.Select(c => Corner(c, grid))],
                        Ink.DashDot,
                        Closed: true
                    )),
            ],
        };
        var standee = standees[First];
        var at = PowerSheet.PlaceOf(standee, circuit, grid);
        var top = grid.RowBox(circuit.Rows[First]).Top;
        yield return new Figure
        {
            Kind = FigureKind.Label,
            Title = $"place: {Place}",
            Shapes =
            [
                new Lettering(new(at.X + standee.LabelLeft, top + Grid.PlaceStrip - 0.5), Place, NameSize),
            ],
        };
    }

    /// <summary>Corner (d, a) lies above cell d and left of cell a.</summary>
    private static At Corner((int Down, int Across) corner, Grid grid)
    {
        var (down, across) = corner;
        var x =
            across % 2 == 1
                ? grid.ColumnBox(across / 2).Left + Inset
                : grid.ColumnBox(across / 2 - 1).Right - Inset;
        var y = down % 2 == 1 ? grid.RowBox(down / 2).Top + Inset : grid.RowBox(down / 2 - 1).Bottom - Inset;
        return new(x, y);
    }

    private static Dictionary<(int Down, int Across), string> Owners(PowerCircuit circuit, Board board)
    {
        var owners = new Dictionary<(int, int), string>();
        for (var lane = 0; lane < circuit.Lanes.Members.Count; lane++)
        {
            var across = board.Across.ColumnOf(lane) * 2 + 1;
            var members = circuit.Lanes.Members[lane];
            for (var i = 0; i < members.Count; i++)
            {
                if (circuit.Blocks[members[i]].Unit.Device.Place is not { } place)
                    continue;
                var (from, to) = (circuit.Rows[members[i]], circuit.Rows[members[i]]);
                if (i + 1 < members.Count && circuit.Blocks[members[i + 1]].Unit.Device.Place == place)
                    to = circuit.Rows[members[i + 1]];
                for (var down = from * 2 + 1; down <= to * 2 + 1; down++)
                    owners[(down, across)] = place;
            }
        }
        for (var column = 0; column + 1 < board.Order.Count; column++)
        for (var down = 0; down <= circuit.RowCount * 2; down++)
            if (
                owners.TryGetValue((down, column * 2 + 1), out var left)
                && owners.TryGetValue((down, column * 2 + 3), out var right)
                && left == right
            )
                owners[(down, column * 2 + 2)] = left;
        return owners;
    }

    private static HashSet<(int Down, int Across)> Flood(
        (int Down, int Across) start,
        string place,
        Dictionary<(int Down, int Across), string> owners
    )
    {
        var cells = new HashSet<(int Down, int Across)> { start };
        var open = new Queue<(int Down, int Across)>([start]);
        while (open.TryDequeue(out var cell))
            foreach (var (down, across) in new[] { (-1, 0), (1, 0), (0, -1), (0, 1) })
            {
                var next = (cell.Down + down, cell.Across + across);
                if (owners.GetValueOrDefault(next) == place && cells.Add(next))
                    open.Enqueue(next);
            }
        return cells;
    }
}
