using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class SuppliesParalleled : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E102",
            Name = "supplies-paralleled",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "Two supplies that are not synchronised can be joined.",
            Why =
                "Each supply drives current into the other without limit, and opening one no longer makes anything dead.",
            Reference =
                "IEC 60204-1, 5.3.1 (interlocks between supplies); NEC 702.5 (transfer equipment); clause numbers from memory",
            Remedy =
                "interlock the devices that connect the supplies, or use a transfer switch that breaks before it makes",
            Example = new(
                "two-supplies",
                [
                    "mechanical interlock  MI1        between Q1 and Q2",
                    "selector              S5         MAINS | 0 | STANDBY",
                    "F01[L1] -> F5 -> S5 at MAINS -> NC Q2 -> coil Q1 -> MAINS[N]",
                    "F02[L1] -> F6 -> S5 at STANDBY -> NC Q1 -> coil Q2 -> STANDBY[N]",
                    "never Q1 and Q2 closed",
                ],
                [
                    "",
                    "selector              S5         CUT | MAINS\nselector              S6         CUT | STANDBY",
                    "F01[L1] -> F5 -> S5 at MAINS -> coil Q1 -> MAINS[N]",
                    "F02[L1] -> F6 -> S6 at STANDBY -> coil Q2 -> STANDBY[N]",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var (first, second) in ShortCircuits.SupplyPairs(e))
        foreach (var culprits in ShortCircuits.Between(e, first, second))
            yield return e.Report(this, culprits.Devices)
                .Says(
                    $"{Evidence.List(culprits.Devices, "the wiring")} can join {first.Name} and {second.Name}{e.Passing(culprits.States)}"
                )
                .After(culprits.States)
                .Along(culprits.Path)
                .Finding;
    }
}
