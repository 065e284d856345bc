using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Makes blocks of the units of a panel, with ports numbered through.</summary>
internal sealed class Blocks(Division division, bool oneLine, Shown shown)
{
    private readonly ILookup<string, Passage> touches = division
        .Power.SelectMany(c => c.Passages)
        .ToLookup(p => p.Device, StringComparer.Ordinal);
    private int ports;

    public IReadOnlyList<Block> All() => [.. division.Units.Select(Of)];

    private Block Of(Unit unit, int index)
    {
        var met = touches[unit.Device.Tag].ToList();
        var paths = ElementPath.Of(unit.Device.Blueprint, unit.Terminals);
        var sides = Sides.Of(unit, paths, met);
        var made = oneLine ? Grouped(unit, index, sides, met) : Single(unit, index, sides, paths);
        return new(index, unit, made, Poles(unit, made, paths));
    }

    private List<Port> Single(Unit unit, int index, Sides sides, IReadOnlyList<ElementPath> paths)
    {
        var (above, below) = Slots.Of(sides, paths);
        return
        [
            .. sides.Above.Select(t => Make(unit, index, true, above[t], [t])),
            .. sides.Below.Select(t => Make(unit, index, false, below[t], [t])),
        ];
    }

    private List<Port> Grouped(Unit unit, int index, Sides sides, IReadOnlyList<Passage> met) =>
        [
            .. PortGroups.Of(sides.Above, unit, met).Select((g, i) => Make(unit, index, true, i, g)),
            .. PortGroups.Of(sides.Below, unit, met).Select((g, i) => Make(unit, index, false, i, g)),
        ];

    private Port Make(Unit unit, int block, bool above, int slot, IReadOnlyList<string> terminals) =>
        new(ports++, block, above, slot, [.. terminals.Select(t => new Terminal(unit.Device.Tag, t))]);

    private List<Pole> Poles(Unit unit, List<Port> made, IReadOnlyList<ElementPath> paths)
    {
        int At(string terminal, bool above) =>
            made.FindIndex(p => p.Above == above && p.Has(new(unit.Device.Tag, terminal)));
        var poles = new List<Pole>();
        foreach (var path in paths)
        {
            var (from, to) = (At(path.From, true), path.IsThrough ? At(path.To, false) : At(path.From, true));
            if (from < 0 || to < 0)
                continue;
            var each = path.Hops.Select(h => h.Any(e => Standing.IsClosed(unit.Device, e, shown))).ToList();
            poles.Add(new(from, to, path.Types, each.All(c => c)) { Each = each });
        }
        return [.. poles.DistinctBy(p => (p.From, p.To))];
    }
}
