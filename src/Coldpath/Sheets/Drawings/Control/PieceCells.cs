using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Cells for the parts and nodes of rungs, with all letters that belong to them.</summary>
internal sealed class PieceCells(LadderFacts facts)
{
    private const string NotTraced = "goes elsewhere, not traced";

    /// <summary>A node: a flag at an open end, a name over the wire elsewhere.</summary>
    /// <param name="begins">The rung or branch begins at it.</param>
    /// <param name="ends">The rung or branch ends at it.</param>
    public LaidCell Node(RungNode node, bool begins, bool ends)
    {
        if (node.Name == PanelWires.Earth && (begins || ends))
            return Cells.EarthSign(node.Span, node.At, begins);
        var figure = NameFigure(node.Name, node.At, node.Span);
        var lines = NameLines(node.Name, node.At);
        return begins || ends
            ? Cells.Flag(figure with { Kind = FigureKind.Reference }, lines, node.At, begins, [])
            : Cells.OverWireOf(figure, lines, node.At, []);
    }

    /// <summary>The name of a net at a lead that ends.</summary>
    public LaidCell Lead(string name, int knot, bool begins) =>
        Cells.Flag(
            NameFigure(name, knot, null) with
            {
                Kind = FigureKind.Reference,
            },
            NameLines(name, knot),
            knot,
            begins,
            []
        );

    /// <summary>The name of a net over its wire, with where else it is drawn.</summary>
    public LaidCell Name(string name, int knot) =>
        Cells.OverWireOf(NameFigure(name, knot, null), NameLines(name, knot), knot, []);

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
        return Cells.Flag(figure, new([new(letter, Cells.TagSize, true)]), knot, begins, []);
    }

    public LaidCell Part(Rung rung, RungPart part)
    {
        var drawn = facts.Where.DrawnBy(part);
        return part.IsThrough || drawn.Count > 0 ? Symbol(rung, part, drawn) : Touched(rung, part);
    }

    /// <summary>A terminal that is drawn elsewhere.</summary>
    private LaidCell Touched(Rung rung, RungPart part)
    {
        var terminal = part.Terminals.First();
        var (begins, ends) = (part.Left is null, part.Right is null);
        var knot = begins ? part.Out : part.In;
        var figure = new Figure
        {
            Kind = FigureKind.Reference,
            Title = $"{terminal}, {rung.Words}",
            Device = part.Device.Tag,
            Net = facts.Knots.NetOf(knot),
            Span = part.Span,
            Tone = facts.ToneOf(part.Device.Tag),
            Shapes = [],
        };
        var lines = TextStack
            .Of(terminal.ToString(), Cells.TextSize)
            .With(PlaceLines(facts.Where.Elsewhere(terminal, rung)));
        return begins || ends
            ? Cells.Flag(figure, lines, knot, begins, [])
            : Cells.OverWireOf(figure, lines, knot, []);
    }

    private LaidCell Symbol(Rung rung, RungPart part, IReadOnlyList<Terminal> drawn)
    {
        var read = facts.Read(part);
        var symbol = ControlSymbols.Of(read);
        var label = LabelFigure(part);
        var figure = label with
        {
            Kind = drawn.Count > 0 ? FigureKind.Symbol : FigureKind.Reference,
            Title = $"{PartWords.Title(read, part.Left, part.Right)}, {rung.Words}",
            Part = read.Part.Length > 0 ? read.Part : null,
            Terminals = [.. drawn.Select(t => t.Name)],
            Net = drawn.Count > 0 ? null : facts.Knots.NetOf(part.In),
            Shapes = read.Role == ControlRole.Terminal ? WithoutOpenLead(symbol, part) : symbol.Shapes,
        };
        var tag = read.Role == ControlRole.Terminal ? part.Terminals.First().ToString() : part.Device.Tag;
        return Cells.OfSymbol(
            symbol,
            figure,
            (Mark(part, part.Left, part.In, true), Mark(part, part.Right, part.Out, false)),
            (label, TextStack.Of(tag, Cells.TagSize, bold: true)),
            [.. Below(rung, part, read, symbol, label)],
            facts.Coils.IsHome(part) && facts.Coils.Table(part) is { Count: > 0 } rows
                ? new NotedTable(
                    label with
                    {
                        Kind = FigureKind.Reference,
                        Title = $"contacts of {part.Device.Tag}",
                    },
                    rows
                )
                : null,
            (part.In, part.Out),
            (part.Left is null, part.Right is null),
            [.. Joined(part, drawn)]
        );
    }

    private Figure LabelFigure(RungPart part) =>
        new()
        {
            Kind = FigureKind.Label,
            Title = part.Device.Tag,
            Device = part.Device.Tag,
            Span = part.Span,
            Tone = facts.ToneOf(part.Device.Tag),
            Shapes = [],
        };

    private static IEnumerable<(string, int)> Joined(RungPart part, IReadOnlyList<Terminal> drawn) =>
        drawn.Select(t => (t.ToString(), t.Name == part.Left ? part.In : part.Out));

    /// <summary>Where a rung begins or ends at a terminal it has a lead on one side only.</summary>
    private static IReadOnlyList<Shape> WithoutOpenLead(Symbol symbol, RungPart part) =>
        [
            .. symbol.Shapes.Where(s =>
                s is not Polyline
                || !(
                    (part.Left is null && s.Bounds.Right <= symbol.Width / 2)
                    || (part.Right is null && s.Bounds.Left >= symbol.Width / 2)
                )
            ),
        ];

    private IEnumerable<(Figure, TextStack)> Below(
        Rung rung,
        RungPart part,
        ControlPart read,
        Symbol symbol,
        Figure label
    )
    {
        var lettered = symbol
            .Shapes.OfType<Lettering>()
            .Select(l => l.Text)
            .ToHashSet(StringComparer.Ordinal);
        foreach (var note in PartWords.Notes(read).Where(n => !lettered.Contains(n)))
            yield return (label, TextStack.Of(note, Cells.TextSize, most: 30));
        if (
            read.Role == ControlRole.Contact
            && facts.Coils.Reference(rung, part, Cells.SmallSize) is { } back
        )
            yield return (label with { Kind = FigureKind.Reference }, PlaceLines(back.Places!, back.Text));
        if (!part.IsThrough && facts.Where.IsRepeated(part.Terminals.First()))
            yield return (
                label with
                {
                    Kind = FigureKind.Reference,
                    Net = facts.Knots.NetOf(part.In),
                },
                PlaceLines(facts.Where.Elsewhere(part.Terminals.First(), rung))
            );
        foreach (var terminal in part.Terminals.Where(facts.IsUntraced))
            yield return (
                label with
                {
                    Kind = FigureKind.Reference,
                    Net = facts.Wires.NetOf(terminal),
                },
                TextStack.Of(
                    read.Role == ControlRole.Terminal ? NotTraced : $"{terminal.Name} {NotTraced}",
                    Cells.SmallSize,
                    most: 20
                )
            );
        if (facts.Coils.IsHome(part))
            foreach (var (device, words) in facts.Coils.LinksOf(part))
                yield return (
                    label with
                    {
                        Kind = FigureKind.Link,
                        Device = device,
                        Tone = facts.ToneOf(device),
                        Title = words,
                    },
                    TextStack.Of(words, Cells.SmallSize, most: 30)
                );
    }

    /// <summary>A terminal's name at its lead; a reference where the terminal is met elsewhere as well.</summary>
    private Noted? Mark(RungPart part, string? terminal, int knot, bool onLeft)
    {
        if (terminal is null || !part.IsThrough)
            return null;
        var isRepeated = facts.Where.IsRepeated(new(part.Device.Tag, terminal));
        var figure = LabelFigure(part) with
        {
            Kind = isRepeated ? FigureKind.Reference : FigureKind.Label,
            Title = $"{part.Device.Tag}:{terminal}",
            Net = facts.Knots.NetOf(knot),
        };
        return Cells.Mark(figure, terminal, onLeft);
    }

    private Figure NameFigure(string name, int knot, Findings.Span? span)
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

    /// <summary>A line for each place.</summary>
    private static TextStack PlaceLines(IReadOnlyList<Place> places, string before = "") =>
        new([.. places.Select((p, i) => new TextLine(i == 0 ? before : "", Cells.SmallSize, false, [p]))]);
}
