using Coldpath.Findings;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Cells for nodes and for the names of nets.</summary>
internal sealed class NetCells(LadderFacts facts)
{
    public const string NotTraced = "goes elsewhere, not traced";

    /// <summary>A node: a flag at an open end, a name over the wire elsewhere.</summary>
    /// <param name="begins">The rung or branch begins at it.</param>
    /// <param name="ends">The rung or branch ends at it.</param>
    public LaidCell Node(RungNode node, bool begins, bool ends)
    {
        var figure = NameFigure(node.Name, node.At, node.Span);
        var lines = NameLines(node.Name, node.At);
        return begins || ends
            ? Flags.Of(figure with { Kind = FigureKind.Reference }, lines, node.At, begins)
            : Flags.Over(figure, lines, node.At);
    }

    /// <summary>The name of a net at a lead that ends.</summary>
    public LaidCell Lead(string name, int knot, bool begins) =>
        Flags.Of(
            NameFigure(name, knot, null) with
            {
                Kind = FigureKind.Reference,
            },
            NameLines(name, knot),
            knot,
            begins
        );

    /// <summary>The name of a net over its wire, with where else it is drawn.</summary>
    public LaidCell Name(string name, int knot) =>
        Flags.Over(NameFigure(name, knot, null), NameLines(name, knot), knot);

    /// <summary>An arrow to the next row or from the row above.</summary>
    public LaidCell Fold(string letter, int knot, bool begins)
    {
        var figure = new Figure
        {
            Kind = FigureKind.Reference,
            Title = begins ? $"goes on from {letter}" : $"goes on at {letter}",
            Net = facts.Knots.NetOf(knot),
            Shapes = [],
        };
        return Flags.Of(figure, new([new(letter, Cells.TagSize, true)]), knot, begins);
    }

    /// <summary>A line for each place.</summary>
    /// <param name="before">Stands before the first.</param>
    public static TextStack PlaceLines(IReadOnlyList<Place> places, string before = "") =>
        new([.. places.Select((p, i) => new TextLine(i == 0 ? before : "", Cells.SmallSize, false, [p]))]);

    private Figure NameFigure(string name, int knot, Span? span)
    {
        var net = facts.Knots.NetOf(knot);
        return new()
        {
            Kind = facts.Islands.Elsewhere(knot).Count > 0 ? FigureKind.Reference : FigureKind.Label,
            Title = $"wire {name}",
            Net = net,
            Span = span,
            Shapes = [],
        };
    }

    private TextStack NameLines(string name, int knot)
    {
        var lines = TextStack.Of(name, Cells.TextSize).With(PlaceLines(facts.Islands.Elsewhere(knot)));
        var net = facts.Knots.NetOf(knot);
        if (facts.Wires.IsBonded(net))
            lines = lines.With(TextStack.Of("to earth", Cells.SmallSize));
        return facts.IsUntraced(net) ? lines.With(TextStack.Of(NotTraced, Cells.SmallSize, most: 24)) : lines;
    }
}
