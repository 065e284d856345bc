using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>All that is known of the rungs before anything is measured.</summary>
internal sealed class LadderFacts
{
    private readonly Dictionary<RungPart, ControlPart> read = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<Terminal> untraced;
    private readonly HashSet<string> untracedNets;

    public LadderFacts(
        Panel panel,
        Wiring.Netlist? netlist,
        Division division,
        Shown shown,
        IReadOnlySet<int> breaks
    )
    {
        (Panel, Division, Shown) = (panel, division, shown);
        Wires = new(panel);
        Knots = new();
        untracedNets = panel.Untraced.Select(u => u.Net).ToHashSet(StringComparer.Ordinal);
        Feeds = new(netlist, untracedNets);
        Rungs = RungReader.Read(panel, division.Rungs, Wires, Knots);
        var powerNets = division
            .Units.SelectMany(u => u.Terminals.Select(t => Wires.NetOf(new Terminal(u.Device.Tag, t))))
            .ToHashSet(StringComparer.Ordinal);
        var rails = new Rails(Rungs, Knots, n => Feeds.At(n) is not null, powerNets.Contains);
        (Plans, Sections) = Planning.Of(Rungs, rails, breaks);
        JoinDrawn();
        Apart = [.. division.Apart.Select(ApartRung)];
        IReadOnlyList<Rung> all = [.. Rungs, .. Apart];
        Where = new(all, division);
        Islands = new(all, Knots, Wires, division);
        Coils = new(panel, division, Where, Read);
        untraced = panel.Untraced.Select(u => u.Point).Select(TerminalAt).OfType<Terminal>().ToHashSet();
    }

    public Panel Panel { get; }
    public Division Division { get; }
    public Shown Shown { get; }
    public PanelWires Wires { get; }
    public Knots Knots { get; }
    public Feeds Feeds { get; }
    public IReadOnlyList<Rung> Rungs { get; }

    /// <summary>Parts that no rung passes, each as a rung of its own.</summary>
    public IReadOnlyList<Rung> Apart { get; }
    public IReadOnlyList<RungPlan> Plans { get; }
    public IReadOnlyList<LadderSection> Sections { get; }
    public Whereabouts Where { get; }
    public Islands Islands { get; }
    public Coils Coils { get; }

    /// <summary>What a part is; always the same object for the same part.</summary>
    public ControlPart Read(RungPart part)
    {
        if (!read.TryGetValue(part, out var known))
            read.Add(
                part,
                known = PartReading.Of(
                    part.Device,
                    part.Part,
                    part.Contact,
                    part.Left,
                    part.Right,
                    Panel.System.Rules,
                    Shown
                )
            );
        return known;
    }

    public bool IsUntraced(Terminal terminal) => untraced.Contains(terminal);

    /// <summary>A wire number or node that goes where nobody looked.</summary>
    public bool IsUntraced(string net) => untracedNets.Contains(net);

    public Tone ToneOf(string device) => Shown.Marked.Contains(device) ? Tone.Marked : Tone.Plain;

    /// <summary>Rungs that are joined by a rail or by a node drawn upright are one knot there.</summary>
    private void JoinDrawn()
    {
        var rails = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var plan in Plans)
        {
            if (plan.FromRail)
                Rail(plan.Rung.Start!);
            if (plan.ToRail)
                Rail(plan.Rung.End!);
        }
        var stems = new Dictionary<Stem, int>();
        foreach (var plan in Plans)
        {
            if (plan.From is { } from)
                JoinTo(stems, from, plan.Rung.Start!.Out);
            if (plan.To is { } to)
                JoinTo(stems, to, plan.Rung.End!.In);
        }

        void Rail(RungPiece node) => JoinTo(rails, Knots.NetOf(node.In), node.In);
    }

    private Rung ApartRung(ApartPart part)
    {
        var (left, right) = (new Terminal(part.Device.Tag, part.Left), part.Right);
        var (into, outOf) = (Knots.New(), Knots.New());
        Knots.Name(into, Wires.NetOf(left));
        if (right is null)
            Knots.Join(into, outOf);
        else
            Knots.Name(outOf, Wires.NetOf(new Terminal(part.Device.Tag, right)));
        var span = part.Device.Span;
        var piece = new RungPart(part.Device, part.Part, part.Contact, part.Left, right, span, into, outOf);
        return new(-1, left.ToString(), span, null, [piece], null)
        {
            IsSpare = !IsWired(into) && !IsWired(outOf),
        };
    }

    /// <summary>More than a terminal that nothing is connected to.</summary>
    public bool IsWired(int knot)
    {
        var net = Knots.NetOf(knot);
        return Wires.TerminalsOf(net).Count > 1
            || Wires.NameOf(net) is not null
            || Wires.IsBonded(net)
            || IsUntraced(net);
    }

    private void JoinTo<T>(Dictionary<T, int> firsts, T key, int knot)
        where T : notnull
    {
        if (!firsts.TryAdd(key, knot))
            Knots.Join(firsts[key], knot);
    }

    private static Terminal? TerminalAt(string point)
    {
        var colon = point.IndexOf(':', StringComparison.Ordinal);
        return colon < 0 ? null : new Terminal(point[..colon], point[(colon + 1)..]);
    }
}
