namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Millimetres for a board: columns with gaps between them, rows with channels between them. Wires run in gaps,
/// channels and their own slots only, so none can meet a symbol or letters.
/// </summary>
internal sealed class Grid
{
    /// <summary>From wire to wire in a channel and in a gap.</summary>
    public const double TrackPitch = 5;
    private const double LinkPitch = 2.5;
    private const double Padding = 2.5;
    private const double ChannelEdge = 2.5;
    private const double GapEdge = 2.5;

    /// <summary>Room for the name of a place above a row's symbols.</summary>
    public const double PlaceStrip = 5;

    private readonly Board board;
    private readonly double pitch;
    private readonly double[] columnLeft;
    private readonly double[] columnRight;
    private readonly double[] origin;
    private readonly double[] rowTop;
    private readonly double[] portLevel;
    private readonly double[] rowBottom;
    private readonly int[] linkTracksInGap;
    private readonly int[] linkTracksInChannel;

    /// <param name="standees">By block.</param>
    /// <param name="placeWidths">Width of a place's name that begins at a block; 0 for none.</param>
    public Grid(
        PowerCircuit circuit,
        Board board,
        IReadOnlyList<Standee> standees,
        double[] placeWidths,
        LinkTracks links
    )
    {
        this.board = board;
        pitch = standees.Count > 0 ? standees[0].Pitch : 10;
        linkTracksInGap = links.InGaps;
        linkTracksInChannel = links.InChannels;
        var columns = board.Order.Count;
        (columnLeft, columnRight, origin) = (new double[columns], new double[columns], new double[columns]);
        var x = GapWidth(0);
        for (var c = 0; c < columns; c++)
        {
            var members = circuit.Lanes.Members[board.Order[c]];
            columnLeft[c] = x;
            origin[c] = OnGrid(x + Padding - members.Min(b => standees[b].Left));
            var right = members.Max(b => Math.Max(standees[b].Right, standees[b].LabelLeft + placeWidths[b]));
            columnRight[c] = OnGrid(origin[c] + right + Padding);
            x = columnRight[c] + GapWidth(c + 1);
        }
        Width = x;
        var rows = circuit.RowCount;
        (rowTop, portLevel, rowBottom) = (new double[rows], new double[rows], new double[rows]);
        var byRow = standees.ToLookup(s => circuit.Rows[s.Block.Index]);
        var y = ChannelHeight(0);
        for (var r = 0; r < rows; r++)
        {
            rowTop[r] = y;
            var strip = byRow[r].Any(s => placeWidths[s.Block.Index] > 0) ? PlaceStrip : 0;
            portLevel[r] = OnGrid(
                y + Padding + strip + byRow[r].Select(s => s.StubAbove).DefaultIfEmpty(0).Max()
            );
            rowBottom[r] = OnGrid(
                portLevel[r] + byRow[r].Select(s => s.Depth).DefaultIfEmpty(0).Max() + Padding
            );
            y = rowBottom[r] + ChannelHeight(r + 1);
        }
        Height = y;
    }

    public double Width { get; }
    public double Height { get; }

    public double OriginOf(int lane) => origin[board.Across.ColumnOf(lane)];

    public double XOf(Riser riser) => OriginOf(riser.Lane) + riser.Slot * pitch;

    public double XOfLink(int link) =>
        GapLeft(board.Across.GapOf[link]) + GapEdge + board.Across.TrackOf[link] * TrackPitch;

    /// <summary>Dashed links stand right of the wires in a gap.</summary>
    public double XOfMechanical(int gap, int track) =>
        GapLeft(gap) + GapEdge + board.Across.TracksIn[gap] * TrackPitch + track * LinkPitch;

    public double YOf(Trunk trunk) =>
        ChannelTop(trunk.Channel)
        + ChannelEdge
        + linkTracksInChannel[trunk.Channel] * LinkPitch
        + board.TrackOf[trunk] * TrackPitch;

    /// <summary>Dashed links lie above the wires in a channel.</summary>
    public double YOfMechanical(int channel, int track) =>
        ChannelTop(channel) + ChannelEdge + track * LinkPitch;

    /// <summary>Where the upper ports of a row lie.</summary>
    public double PortLevel(int row) => portLevel[row];

    public Box ColumnBox(int column) => new(columnLeft[column], 0, columnRight[column], Height);

    public Box RowBox(int row) => new(0, rowTop[row], Width, rowBottom[row]);

    private double GapLeft(int gap) => gap == 0 ? 0 : columnRight[gap - 1];

    private double ChannelTop(int channel) => channel == 0 ? 0 : rowBottom[channel - 1];

    private double GapWidth(int gap) =>
        GapEdge * 2 + board.Across.TracksIn[gap] * TrackPitch + linkTracksInGap[gap] * LinkPitch;

    private double ChannelHeight(int channel) =>
        ChannelEdge * 2
        + Math.Max(board.TracksIn[channel] - 1, 0) * TrackPitch
        + linkTracksInChannel[channel] * LinkPitch;

    private static double OnGrid(double millimetres) => Math.Ceiling(millimetres / 2.5 - 1e-6) * 2.5;
}
