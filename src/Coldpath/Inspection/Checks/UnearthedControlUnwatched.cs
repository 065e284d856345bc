using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class UnearthedControlUnwatched : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L412",
            Name = "unearthed-control-unwatched",
            Family = Family.ControlLogic,
            Severity = Severity.Caution,
            Title = "A control supply is not earthed, and nothing watches its insulation.",
            Why =
                "The first earth fault changes nothing and nobody learns of it; the second starts a motor or bridges a stop.",
            Reference = "IEC 60204-1, 9.4.3.1 (method b); NFPA 79, 9.4.3; NEC 250.21(B)",
            Remedy = "earth one side of the supply, or fit an insulation monitor",
            Limits = "extra-low voltage marked SELV is left out: it may not be earthed",
            Example = new(
                "direct-on-line",
                ["control transformer  T1    480 V to 120 V, 160 VA, X2 earthed"],
                ["control transformer  T1    480 V to 120 V, 160 VA"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e) =>
        from supply in e.Supplies
        where !supply.ExtraLow && Feeds(e, supply).Any() && !IsEarthed(e, supply) && !IsWatched(e, supply)
        let device = e.Devices.All.First(d =>
            supply.Name == d.Tag || supply.Name.StartsWith(d.Tag + ".", StringComparison.Ordinal)
        )
        select e.Report(this, [device.Tag])
            .Says(
                $"{device.Tag} feeds {Evidence.Some(Feeds(e, supply))} {e.Words.Unearthed}, and nothing watches its insulation"
            )
            .Finding;

    /// <summary>The devices whose coils it energises in some reachable state.</summary>
    private static IEnumerable<string> Feeds(Evidence e, Supply supply) =>
        e
            .Netlist.Variables.Where(v =>
                v.Coil.Count == 2
                && v.Coil.All(net =>
                    e.Table.Meet(e.Settled, e.Network.Reached(net, supply.Name, Grade.Solid))
                )
            )
            .Select(v => v.Device);

    private static bool IsEarthed(Evidence e, Supply supply) =>
        supply.Conductors.Any(c => e.Table.Meet(e.Settled, e.Network.Bonded(c.Net)));

    /// <summary>A device that protects against earth faults measures between it and earth.</summary>
    private static bool IsWatched(Evidence e, Supply supply)
    {
        var measuring = e
            .Netlist.Devices.SelectMany(d => d.Protects)
            .Where(p => p.Against == "earth fault")
            .SelectMany(p => p.Elements)
            .Select(e.Devices.Element)
            .Where(m => m.Type == ElementType.Load && (IsEarth(e, m.A) || IsEarth(e, m.B)));
        return measuring.Any(m =>
            supply.Conductors.Any(c =>
                new[] { m.A, m.B }.Any(net => e.Table.Meet(e.Settled, e.Network.Joined(net, c.Net)))
            )
        );
    }

    private static bool IsEarth(Evidence e, string net) =>
        net == e.Netlist.Earth || e.Table.Meet(e.Settled, e.Network.Bonded(net));
}
