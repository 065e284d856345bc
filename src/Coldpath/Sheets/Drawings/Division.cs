using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings;

/// <summary>
/// What of a panel is drawn where: every terminal of every device belongs to the power sheet, to a rung, or to what is
/// not wired by any chain and stands apart.
/// </summary>
/// <param name="Power">Chains of the power sheet, in the order of the text.</param>
/// <param name="Rungs">Chains of the control sheet, in the order of the text.</param>
/// <param name="Units">Devices of the power sheet in declared order, with the terminals that are drawn there.</param>
/// <param name="Apart">Parts that no rung passes and the power sheet does not show, in declared order.</param>
internal sealed record Division(
    IReadOnlyList<Chain> Power,
    IReadOnlyList<Chain> Rungs,
    IReadOnlyList<Unit> Units,
    IReadOnlyList<ApartPart> Apart
)
{
    public static Division Of(Panel panel)
    {
        var rungs = panel.Chains.Where(c => IsRung(panel, c)).ToList();
        var power = panel.Chains.Except(rungs).ToList();
        var inRungs = TouchedBy(rungs);
        var onPower = TouchedBy(power);
        var passedInRungs = PassedBy(rungs);
        var units = panel
            .Devices.Select(d => new Unit(d, PowerTerminals.Of(d, onPower, inRungs, passedInRungs)))
            .Where(u => u.Terminals.Count > 0)
            .ToList();
        var drawn = inRungs
            .Concat(units.SelectMany(u => u.Terminals.Select(t => new Terminal(u.Device.Tag, t))))
            .ToHashSet();
        return new(power, rungs, units, [.. panel.Devices.SelectMany(d => ApartPart.Of(d, drawn))]);
    }

    /// <summary>Numbered as one, or passing something that is no part of a load's feed.</summary>
    private static bool IsRung(Panel panel, Chain chain) =>
        chain.Rung is not null
        || chain.Passages.Any(p => p.IsThrough && p.Left.Count == 1 && !PassesPower(panel, p));

    private static bool PassesPower(Panel panel, Passage passage) =>
        passage.Contact is null
        && panel.Find(passage.Device) is { } device
        && PowerTerminals.OfElements(device).Contains(passage.Left[0]);

    private static HashSet<Terminal> TouchedBy(IEnumerable<Chain> chains) =>
        [
            .. from c in chains
            from p in c.Passages
            from t in p.Left.Concat(p.Right)
            select new Terminal(p.Device, t),
        ];

    private static HashSet<Terminal> PassedBy(IEnumerable<Chain> chains) =>
        [
            .. from c in chains
            from p in c.Passages
            where p.IsThrough
            from t in p.Left.Concat(p.Right)
            select new Terminal(p.Device, t),
        ];
}

/// <summary>A device on the power sheet.</summary>
/// <param name="Terminals">Those drawn there, in the device's order.</param>
internal sealed record Unit(PlacedDevice Device, IReadOnlyList<string> Terminals);
