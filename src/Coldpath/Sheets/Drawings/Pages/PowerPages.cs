using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Power;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>
/// Deals the devices of the power side out to sheets: what is too tall is cut between rows, what is too wide between
/// lanes, and a single device that fits no sheet has one as large as it needs.
/// </summary>
internal sealed class PowerPages(Panel panel, Division division, DrawRequest request, Shown shown)
{
    /// <summary>Stands for a sheet's number while nobody knows it: as wide as any up to it.</summary>
    private const string Unnumbered = "sheet 888";

    private readonly IReadOnlyList<SheetSize> sizes = SheetSize.Of(request.Paper);

    /// <summary>Units of each sheet, in the order of the sheets.</summary>
    public IReadOnlyList<IReadOnlyList<Unit>> Deal() =>
        division.Units.Count == 0 ? []
        : sizes.Count == 0 ? [division.Units]
        : [.. Split(division.Units)];

    /// <summary>Draws some of the units.</summary>
    /// <param name="elsewhere">Words for where a terminal that is not among them is drawn.</param>
    public PlacedPart Draw(IReadOnlyList<Unit> units, Func<Terminal, string> elsewhere)
    {
        var circuit = CircuitOf(units);
        return PowerSheet.Of(
            circuit,
            circuit.Arranged(),
            panel.System.Rules,
            request.OneLine,
            shown,
            elsewhere
        );
    }

    private PowerCircuit CircuitOf(IReadOnlyList<Unit> units) =>
        PowerCircuit.Of(panel, division with { Units = units }, request.OneLine, shown);

    private IEnumerable<IReadOnlyList<Unit>> Split(IReadOnlyList<Unit> units)
    {
        var circuit = CircuitOf(units);
        var part = Drawn(circuit);
        if (units.Count == 1 || sizes.Any(s => s.Fits(part)))
            return [units];
        var tallest = sizes.Max(s => s.Content.Height) / SheetSize.Smallest;
        var (first, left) =
            part.Height > tallest && circuit.RowCount > 1
                ? Cut(units, n => circuit.Rows[n], circuit.RowCount, p => p.Height <= tallest)
                : Cut(units, circuit.LaneOf, circuit.Lanes.Members.Count, p => sizes.Any(s => s.Fits(p)));
        return [.. Split(first), .. Split(left)];
    }

    /// <summary>The most rows or lanes from the first that fit, at least one and not all; and what is left.</summary>
    private (IReadOnlyList<Unit> First, IReadOnlyList<Unit> Left) Cut(
        IReadOnlyList<Unit> units,
        Func<int, int> place,
        int places,
        Func<PlacedPart, bool> fits
    )
    {
        if (places < 2)
            return ([units[0]], [.. units.Skip(1)]);
        var (least, most) = (1, places - 1);
        while (least < most)
        {
            var middle = (least + most + 1) / 2;
            var some = CircuitOf(Below(middle));
            if (fits(Drawn(some)))
                least = middle;
            else
                most = middle - 1;
        }
        return (Below(least), [.. units.Where((_, i) => place(i) >= least)]);

        IReadOnlyList<Unit> Below(int limit) => [.. units.Where((_, i) => place(i) < limit)];
    }

    private PlacedPart Drawn(PowerCircuit circuit) =>
        PowerSheet.Of(
            circuit,
            circuit.Arranged(),
            panel.System.Rules,
            request.OneLine,
            shown,
            _ => Unnumbered
        );
}
