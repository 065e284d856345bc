using Coldpath.Wiring;

namespace Coldpath.Panels.Binding;

/// <summary>What counts as operating a control that is meant to stop something.</summary>
internal static class Operations
{
    private static readonly string[] OffNames = ["OFF", "STOP", "0"];
    private static readonly string[] OpenNames = ["open", "off"];

    /// <summary>
    /// Away from rest for a stop or momentary control, at OFF for a selector, open for a switch; none when the
    /// variable has nothing of the sort. Values on the way from one position to the next do not count.
    /// </summary>
    public static IEnumerable<string> OperatedValues(Variable variable, ControlUse use)
    {
        var positions = variable.Values.Where(v => !IsPassing(variable, v)).ToList();
        if (use == ControlUse.Stop || variable.Momentary)
            return positions.Where(v => v != variable.Rest);
        var off = positions.Where(OffNames.Contains).ToList();
        return off.Count > 0 ? off : positions.Where(OpenNames.Contains);
    }

    /// <summary>Left by itself and at once.</summary>
    private static bool IsPassing(Variable variable, string value) =>
        variable.Moves.Any(m => m.From == value && m is { By: Mover.Settle, When: Constant { Value: true } });
}
