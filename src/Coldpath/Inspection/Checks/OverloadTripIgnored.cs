using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class OverloadTripIgnored : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "P203",
            Name = "overload-trip-ignored",
            Family = Family.Protection,
            Severity = Severity.Danger,
            Title = "An overload relay can have tripped while its heaters go on carrying the motor.",
            Why = "The relay has done its part; its contact opens some other rung.",
            Reference = "NEC 430.38; IEC 60204-1, 7.3",
            Remedy =
                "wire the relay's trip contact (95-96) into the coil circuit of the contactor whose current it watches",
            Example = new(
                "direct-on-line",
                ["rung 1  1   -> NC F2 -> S0 -> S1 -> node 11", "rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 1  1   -> S0 -> S1 -> node 11", "rung 3  11  -> NO Q1 -> NC F2 -> coil K1 -> 2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var overload in e.Protections.Overloads)
        {
            var states = e.Protections.IgnoredTrip(overload);
            if (states.IsFalse)
                continue;
            var motor = e.Motors.FirstOrDefault(m => e.Table.Meet(states, e.Runs(m)));
            yield return e.Report(
                    this,
                    [overload.Device, .. motor is null ? Array.Empty<string>() : [motor.Name]]
                )
                .Says(
                    $"{overload.Device} tripped does not stop {motor?.Name ?? "the current"} that it watches"
                )
                .After(states)
                .Finding;
        }
    }
}
