namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Collects what is drawn: figures as they come, lines by the net that they belong to.</summary>
internal sealed class Pen(Knots knots)
{
    private readonly List<Noted> figures = [];
    private readonly Dictionary<string, WireInk> wires = new(StringComparer.Ordinal);
    private readonly List<WireInk> inOrder = [];

    public IReadOnlyList<Noted> Figures => figures;

    public IReadOnlyList<WireInk> Wires => inOrder;

    public void Add(Noted figure) => figures.Add(figure);

    public void Wire(int knot, At from, At to) => Of(knot).Line(from, to);

    public void Dot(int knot, At at) => Of(knot).Dot(at);

    /// <summary>The net's lines here join this terminal.</summary>
    public void Join(int knot, string terminal) => Of(knot).Join(terminal);

    /// <summary>
    /// An upright line through the given heights, with a dot where it is met: at each height between its ends, and at
    /// an end where a line goes on to the other side.
    /// </summary>
    /// <param name="meets">The height at which lines come from both sides.</param>
    public void Upright(int knot, double x, IEnumerable<double> heights, double meets = double.NaN)
    {
        var ys = heights.Order().Distinct().ToList();
        foreach (var (from, to) in ys.Zip(ys.Skip(1)))
            Wire(knot, new(x, from), new(x, to));
        if (ys.Count < 2)
            return;
        foreach (var y in ys.Where(y => (y > ys[0] && y < ys[^1]) || y == meets))
            Dot(knot, new(x, y));
    }

    private WireInk Of(int knot)
    {
        var net = knots.NetOf(knot);
        if (!wires.TryGetValue(net, out var ink))
        {
            wires.Add(net, ink = new(net));
            inOrder.Add(ink);
        }
        return ink;
    }
}

/// <summary>Lines, dots and terminals of one net.</summary>
internal sealed class WireInk(string net)
{
    private readonly List<Shape> shapes = [];
    private readonly List<string> terminals = [];
    private readonly HashSet<string> joined = new(StringComparer.Ordinal);

    private const double DotRadius = 0.6;

    public string Net => net;

    public IReadOnlyList<Shape> Shapes => shapes;

    public IReadOnlyList<string> Terminals => terminals;

    public void Line(At from, At to)
    {
        if (from != to)
            shapes.Add(new Polyline([from, to], Ink.Line));
    }

    public void Dot(At at) => shapes.Add(new Ring(at, DotRadius, Ink.Line, Filled: true));

    public void Join(string terminal)
    {
        if (joined.Add(terminal))
            terminals.Add(terminal);
    }

    public Figure ToFigure(Shown shown) =>
        new()
        {
            Kind = FigureKind.Wire,
            Title = terminals.Count == 0 ? $"wire {net}" : $"wire {net}: {string.Join(", ", terminals)}",
            Shapes = shapes,
            Net = net,
            Terminals = terminals,
            Tone = shown.ToneOf(net),
        };
}
