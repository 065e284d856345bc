using Coldpath.Findings;
using Coldpath.Panels;

namespace Coldpath.Inspection.Checks;

public sealed class DeviceUnwired : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "D504",
            Name = "device-unwired",
            Family = Family.Description,
            Severity = Severity.Caution,
            Title = "A device is declared and wired to nothing.",
            Why =
                "What it was to do, a stop or a pressure contact say, does not happen, or it is wired and the description does not show it.",
            Reference = "common practice",
            Remedy = "wire it, or take it out of the description",
            Example = new(
                "direct-on-line",
                ["push button          S2    start"],
                ["push button          S2    start\npressure contact     B1    opens on low pressure"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        var alone = e
            .Panel.Nets.Where(n =>
                n.Names.Count == 0 && n.Terminals.Select(t => t.Device).Distinct().Count() == 1
            )
            .SelectMany(n => n.Terminals)
            .ToHashSet();
        var elsewhere = e
            .Panel.Bonds.Select(b => b.Net)
            .Concat(e.Panel.Untraced.Select(u => u.Net))
            .ToHashSet();
        alone.ExceptWith(e.Panel.Nets.Where(n => elsewhere.Contains(n.Name)).SelectMany(n => n.Terminals));
        return from device in e.Panel.Devices
            where IsToBeWired(device)
            let terminals = device.Terminals.Select(t => new Terminal(device.Tag, t)).ToArray()
            where terminals.All(alone.Contains) && !terminals.Any(e.Devices.NeedsWire)
            select e.Report(this, [device.Tag]).Says($"{device.Tag} is wired to nothing").Finding;
    }

    /// <summary>It has terminals or contacts, unlike a linkage between others.</summary>
    private static bool IsToBeWired(PlacedDevice device) =>
        device.Terminals.Count > 0 || device.Blueprint.Families.Count > 0;
}
