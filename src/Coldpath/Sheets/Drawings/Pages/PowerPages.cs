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

    private readonly PowerStyle style = new(panel.System.Rules, request.OneLine, shown);
    private readonly IReadOnlyList<SheetSize> sizes = SheetSize.Of(request.Paper);

    /// <summary>Units of each sheet, in the order of the sheets.</summary>
    public IReadOnlyList<IReadOnlyList<Unit>> Deal() =>
        division.Units.Count == 0 ? []
        : sizes.Count == 0 ? [division.Units]
        : [.. Split(division.Units)];

    /// <summary>Draws some of the units.</summary>
    /// <param name="elsewhere">Words for where a net goes on, at a terminal that is not among them or by its name.</param>
    public PlacedPart Draw(IReadOnlyList<Unit> units, Func<PanelNet, Terminal?, string> elsewhere)
    {
        var circuit = CircuitOf(units);
        return PowerSheet.Of(circuit, circuit.Arranged(), style, elsewhere);
    }

    private PowerCircuit CircuitOf(IReadOnlyList<Unit> units) =>
        PowerCircuit.Of(panel, division with { Units = units }, request.OneLine, shown);

    private IEnumerable<IReadOnlyList<Unit>> Split(IReadOnlyList<Unit> units)
    {
        while (units.Count > 0)
        {
            var circuit = CircuitOf(units);
            var lanes = circuit.Lanes.Members.Count;
            var fitting = Most(units, circuit.LaneOf, lanes);
            var first = Whole(fitting, units, circuit);
            if (first.Count == 0)
            {
                var lane = units.Where((_, i) => circuit.LaneOf(i) == 0).ToList();
                first = Most(lane, i => i, lane.Count) is { Count: > 0 } rows ? rows : [lane[0]];
            }
            yield return first;
            units = [.. units.Except(first)];
        }
    }

    /// <summary>
    /// Fewer lanes where that keeps together what hangs together apart from the first lane, such as the two fuses of
    /// one transformer.
    /// </summary>
    private static IReadOnlyList<Unit> Whole(
        IReadOnlyList<Unit> fitting,
        IReadOnlyList<Unit> units,
        PowerCircuit circuit
    )
    {
        if (fitting.Count == 0 || fitting.Count == units.Count)
            return fitting;
        var taken = fitting.ToHashSet();
        var cut =
            Enumerable.Range(0, units.Count).Where(i => taken.Contains(units[i])).Max(circuit.LaneOf) + 1;
        while (cut > 0 && Severs(cut, circuit))
            cut--;
        return cut == 0 ? fitting : [.. units.Where((_, i) => circuit.LaneOf(i) < cut)];
    }

    /// <summary>Whether wires that do not touch the first lane lead from lanes before the cut to lanes behind it.</summary>
    private static bool Severs(int cut, PowerCircuit circuit) =>
        circuit.Joints.Any(j =>
        {
            var lanes = j.Select(p => circuit.LaneOf(p.Block)).ToList();
            return lanes.Min() is var first && first > 0 && first < cut && lanes.Max() >= cut;
        });

    /// <summary>Those in the most places from the first that fit on one sheet; empty when not even the first does.</summary>
    private IReadOnlyList<Unit> Most(IReadOnlyList<Unit> units, Func<int, int> place, int places)
    {
        var (fits, tooMany) = (0, 1);
        while (tooMany <= places && Fits(Below(tooMany)))
            (fits, tooMany) = (tooMany, tooMany == places ? places + 1 : Math.Min(tooMany * 2, places));
        while (tooMany - fits > 1)
        {
            var middle = (fits + tooMany) / 2;
            (fits, tooMany) = Fits(Below(middle)) ? (middle, tooMany) : (fits, middle);
        }
        return Below(fits);

        IReadOnlyList<Unit> Below(int limit) => [.. units.Where((_, i) => place(i) < limit)];
    }

    private bool Fits(IReadOnlyList<Unit> units)
    {
        var part = Draw(units, (_, _) => Unnumbered);
        return sizes.Any(s => s.Fits(part));
    }
}
