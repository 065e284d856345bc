using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Cells for the parts of devices in rungs, with all letters that belong to them.</summary>
internal sealed class PartCells(LadderFacts facts)
{
    /// <summary>Its symbol; a reference where it is a terminal that is drawn elsewhere.</summary>
    public LaidCell Of(Rung rung, RungPart part)
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
            .With(NetCells.PlaceLines(facts.Where.Elsewhere(terminal, rung)));
        return begins || ends ? Flags.Of(figure, lines, knot, begins) : Flags.Over(figure, lines, knot);
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
            Part = read.Part,
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
                ? Table(label, rows)
                : null,
            (part.In, part.Out),
            (part.Left is null, part.Right is null),
            [.. Joined(part, drawn)]
        );
    }

    private static NotedTable Table(Figure label, IReadOnlyList<(string, string, Place)> rows) =>
        new(label with { Kind = FigureKind.Reference, Title = $"contacts of {label.Device}" }, rows);

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

    /// <summary>What it does, what it refers to, what is not known of it, what it is linked with.</summary>
    private IEnumerable<(Figure, TextStack)> Below(
        Rung rung,
        RungPart part,
        ControlPart read,
        Symbol symbol,
        Figure label
    ) =>
        Notes(read, symbol)
            .Select(lines => (label, lines))
            .Concat(References(rung, part, read).Select(r => (r.Figure(label), r.Lines)))
            .Concat(Links(part).Select(l => (l.Figure(label), l.Lines)));

    private static IEnumerable<TextStack> Notes(ControlPart read, Symbol symbol)
    {
        var lettered = symbol
            .Shapes.OfType<Lettering>()
            .Select(l => l.Text)
            .ToHashSet(StringComparer.Ordinal);
        return PartWords
            .Notes(read)
            .Where(n => !lettered.Contains(n))
            .Select(n => TextStack.Of(n, Cells.TextSize, most: 30));
    }

    private IEnumerable<(Func<Figure, Figure> Figure, TextStack Lines)> References(
        Rung rung,
        RungPart part,
        ControlPart read
    )
    {
        if (read.Role == ControlRole.Contact && facts.Coils.Reference(rung, part) is var (before, places))
            yield return (Refers(null), NetCells.PlaceLines(places, before));
        var first = part.Terminals.First();
        if (!part.IsThrough && facts.Where.IsRepeated(first))
            yield return (
                Refers(facts.Knots.NetOf(part.In)),
                NetCells.PlaceLines(facts.Where.Elsewhere(first, rung))
            );
        foreach (var terminal in part.Terminals.Where(facts.IsUntraced))
        {
            var words = part.IsThrough ? $"{terminal.Name} {NetCells.NotTraced}" : NetCells.NotTraced;
            yield return (
                Refers(facts.Wires.NetOf(terminal)),
                TextStack.Of(words, Cells.SmallSize, most: 20)
            );
        }

        static Func<Figure, Figure> Refers(string? net) =>
            label => label with { Kind = FigureKind.Reference, Net = net };
    }

    private IEnumerable<(Func<Figure, Figure> Figure, TextStack Lines)> Links(RungPart part) =>
        facts.Coils.IsHome(part)
            ? facts
                .Coils.LinksOf(part)
                .Select(l => (Named(l.Device, l.Words), TextStack.Of(l.Words, Cells.SmallSize, most: 30)))
            : [];

    private Func<Figure, Figure> Named(string device, string words) =>
        label =>
            label with
            {
                Kind = FigureKind.Link,
                Device = device,
                Tone = facts.ToneOf(device),
                Title = words,
            };

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
}
