using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection.Checks;

public sealed class EarthFaultInControl : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F703",
            Name = "earth-fault-in-control",
            Family = Family.Failures,
            Severity = Severity.Danger,
            Title =
                "One earth fault in the control circuit starts a motor, bridges its stop or blows no fuse.",
            Why =
                "Cables chafe and terminal boxes get wet: an earth fault is the likeliest failure there is.",
            Reference = "IEC 60204-1, 9.4.3.1; NFPA 79, 9.4.3; NEC 430.74",
            Remedy =
                "earth the side of the secondary that goes straight to the coils, and put every contact ahead of the coils",
            Limits =
                "the wire from a transformer or power supply to its first fuse is left out: what protects the primary has to do",
            Example = new(
                "two-contactors",
                [
                    "rung 1  1   -> NC F2 -> node 10",
                    "rung 2  10  -> S0:11-12 -> ( S1:13-14 -> NC Q1 -> NC Q2 | NO K1 ) -> coil K1 -> 2",
                    "rung 3  10  -> S0:21-22 -> ( S1:23-24 -> NC Q1 -> NC Q2 | NO K2 ) -> coil K2 -> 2",
                    "rung 4  10  -> S0:31-32 -> NO K1 -> NO K2 -> coil Q1 -> 2",
                    "rung 5  10  -> S0:41-42 -> NO K2 -> NO K1 -> coil Q2 -> 2",
                    "never M1 runs and S0 pressed, when quiet, even with 1 failure",
                ],
                [
                    "rung 1  1   -> node 10",
                    "rung 2  10  -> S0:11-12 -> ( S1:13-14 -> NC Q1 -> NC Q2 | NO K1 ) -> coil K1 -> 2",
                    "rung 3  10  -> S0:21-22 -> ( S1:23-24 -> NC Q1 -> NC Q2 | NO K2 ) -> coil K2 -> 2",
                    "rung 4  10  -> S0:31-32 -> NO K1 -> NO K2 -> coil Q1 -> node 9",
                    "rung 5  10  -> S0:41-42 -> NO K2 -> NO K1 -> coil Q2 -> node 9\n9 -> NC F2 -> 2",
                    "never M1 runs and S0 pressed, when quiet, even with 1 failure\nwaive earthed-conductor-switched on F2 because \"the wire stays in the enclosure\"",
                ]
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e)
    {
        foreach (var motor in e.Motors)
        {
            foreach (var set in e.SingleFailures.Starting(motor, FailureSort.Touching))
                yield return Told(e, set, motor, Severity.Danger, $"starts {motor.Name}");
            foreach (var stop in Stops.All(e))
            foreach (var set in e.SingleFailures.Defeating(stop, motor, FailureSort.Touching))
                yield return Told(
                    e,
                    set,
                    motor,
                    Severity.Danger,
                    $"bridges {stop.Tag}: {motor.Name} runs on"
                );
            foreach (var (device, trip) in Protecting(e))
            foreach (var set in e.SingleFailures.Defeating(trip, motor, FailureSort.Touching))
                yield return Told(
                    e,
                    set,
                    motor,
                    Severity.Note,
                    $"bridges {device.Tag}: {motor.Name} runs on when it has tripped"
                );
        }
        FailureSet[] shorts =
        [
            .. e.SingleFailures.Unprotected(FailureSort.Touching).Where(set => !IsAheadOfTheFuse(e, set)),
        ];
        if (shorts.Length > 0)
            yield return e.Report(this, shorts.Select(set => set.Members[0].Device))
                .Says(
                    $"one earth fault on {Evidence.Some(shorts.Select(WireOf))} is a short that no device clears"
                )
                .After(shorts[0])
                .Finding;
    }

    /// <summary>The wire that touches earth: "104" of "104.touches earth".</summary>
    private static string WireOf(FailureSet set) =>
        set.Members[0].Name[..set.Members[0].Name.LastIndexOf('.')];

    /// <summary>
    /// The piece of wire from a transformer or power supply to its first fuse cannot have one ahead of it: it is kept
    /// short, and what protects the primary has to do.
    /// </summary>
    private static bool IsAheadOfTheFuse(Evidence e, FailureSet set)
    {
        var outputs = e
            .Netlist.Converters.SelectMany(c => c.Output.Conductors)
            .Select(c => c.Net)
            .ToHashSet();
        var faults = set.Behaviour.Netlist.Elements.Where(x =>
            x.Type == ElementType.Fault && Guards.Variables(x.Closed).Contains(set.Members[0].Name)
        );
        return faults.Any(x => outputs.Contains(x.A));
    }

    private static IEnumerable<(NetlistDevice Device, Protection Trip)> Protecting(Evidence e) =>
        e.Netlist.Devices.SelectMany(d => d.Protects.Select(p => (d, p))).DistinctBy(p => p.p.Variable);

    private Finding Told(Evidence e, FailureSet set, Load motor, Severity severity, string does)
    {
        var part = set.Members[0];
        return e.Report(this, [part.Device, motor.Name])
            .Grade(severity)
            .Says($"one earth fault {does}: {FailureWords.Of(part)}")
            .After(set)
            .Finding;
    }
}
