using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Figures with their own corner at (0, 0), to be put somewhere on a sheet.</summary>
/// <param name="Width">Millimetres.</param>
/// <param name="Height">Millimetres.</param>
internal sealed record PlacedPart(double Width, double Height, IReadOnlyList<Figure> Figures);

/// <summary>Draws a power circuit: places of devices, wires, symbols, letters, links.</summary>
internal sealed class PowerSheet
{
    private readonly PowerCircuit circuit;
    private readonly Shown shown;
    private readonly Board board;
    private readonly IReadOnlyList<Standee> standees;
    private readonly IReadOnlyList<Stub> stubs;
    private readonly IReadOnlyList<Region> regions;
    private readonly LinkTracks links;
    private readonly Grid grid;

    private PowerSheet(
        PowerCircuit circuit,
        Board board,
        PowerStyle style,
        Func<PanelNet, Terminal?, string> elsewhere
    )
    {
        this.circuit = circuit;
        this.board = board;
        shown = style.Shown;
        var deviceLinks = new DeviceLinks(circuit.Panel);
        stubs = Stubs.Of(circuit, elsewhere);
        var byBlock = stubs.ToLookup(s => s.Port.Block);
        standees = [.. circuit.Blocks.Select(b => Standee.Of(b, style, deviceLinks, byBlock[b.Index]))];
        regions = Region.Of(circuit, board);
        links = new LinkTracks(circuit, board, deviceLinks);
        grid = new Grid(circuit, board, standees, Region.NameWidths(regions, circuit), links);
    }

    /// <param name="elsewhere">Words for where a net goes on, as for <see cref="Stubs"/>.</param>
    public static PlacedPart Of(
        PowerCircuit circuit,
        Board board,
        PowerStyle style,
        Func<PanelNet, Terminal?, string> elsewhere
    )
    {
        var sheet = new PowerSheet(circuit, board, style, elsewhere);
        return new(sheet.grid.Width, sheet.grid.Height, [.. sheet.Figures()]);
    }

    private IEnumerable<Figure> Figures() =>
        [
            .. regions.SelectMany(r => r.Figures(grid, standees, circuit)),
            .. MechanicalLinks.Of(links, grid, circuit, standees),
            .. new PowerWires(circuit, board, grid, standees, stubs, shown).Figures(),
            .. standees.Select(Symbol),
            .. standees.SelectMany(Letters),
        ];

    private Figure Symbol(Standee standee)
    {
        var device = standee.Block.Unit.Device;
        var at = PlaceOf(standee);
        return new Figure
        {
            Kind = FigureKind.Symbol,
            Title = TitleOf(device, standee.Block),
            Device = device.Tag,
            Terminals = [.. standee.Block.Ports.SelectMany(p => p.Terminals.Select(t => t.Name)).Distinct()],
            Span = device.Span,
            Tone = ToneOf(device),
            Shapes = [.. standee.Symbol.Shapes.Select(s => s.Moved(at.X, at.Y))],
        };
    }

    private IEnumerable<Figure> Letters(Standee standee)
    {
        var at = PlaceOf(standee);
        return standee.Label.At(
            at.Plus(standee.LabelLeft, 0),
            standee.Block.Unit.Device,
            ToneOf(standee.Block.Unit.Device)
        );
    }

    private Tone ToneOf(PlacedDevice device) => shown.Marked.Contains(device.Tag) ? Tone.Marked : Tone.Plain;

    private At PlaceOf(Standee standee) => PlaceOf(standee, circuit, grid);

    /// <summary>Where a block's first port lies.</summary>
    public static At PlaceOf(Standee standee, PowerCircuit circuit, Grid grid) =>
        new(
            grid.OriginOf(circuit.LaneOf(standee.Block.Index)),
            grid.PortLevel(circuit.Rows[standee.Block.Index])
        );

    private static string TitleOf(PlacedDevice device, Block block)
    {
        var ratings = device.Written.Count > 0 ? $", {string.Join(", ", device.Written)}" : "";
        var place = device.Place is null ? "" : $", in {device.Place}";
        var terminals = string.Join(
            ' ',
            block.Ports.SelectMany(p => p.Terminals.Select(t => t.Name)).Distinct()
        );
        return $"{device.Tag}, {device.Blueprint.Kind.Name}{ratings}{place}; terminals {terminals}";
    }
}
