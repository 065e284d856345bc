using Coldpath.Wiring;

namespace Coldpath.Panels.Binding;

/// <summary>What counts as operating a control that is meant to stop something.</summary>
internal static class Operations
{
    private static readonly string[] OffNames = ["OFF", "STOP", "0"];
    private static readonly string[] OpenNames = ["open", "off"];

    /// <summary>
    /// Away from rest for a stop or momentary control, at OFF for a selector, open for a switch; none when the
    /// variable has nothing of the sort. The values between two positions do not count.
    /// </summary>
    public static IEnumerable<string> OperatedValues(Variable variable, ControlUse use)
    {
        var positions = variable.Values.Where(v => !v.Contains('>')).ToList();
        if (use == ControlUse.Stop || variable.Momentary)
            return positions.Where(v => v != variable.Rest);
        var off = positions.Where(OffNames.Contains).ToList();
        return off.Count > 0 ? off : positions.Where(OpenNames.Contains);
    }
}
