using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class PhaseToPhaseShort : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E101",
            Name = "phase-to-phase-short",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "Two conductors of one supply can be bolted together.",
            Why =
                "A bolted short throws metal and light at whoever stands there, welds contactors and stops the plant; a passing one does the same for as long as it lasts.",
            Reference = "IEC 60204-1, 9.3 (interlocks); common practice",
            Remedy =
                "lock the devices out against each other: a normally closed contact of each in the other's coil circuit, and a mechanical interlock where the overlap is a phase fault",
            Example = new(
                "reversing",
                [
                    "mechanical interlock  MI1   between Q1 and Q2",
                    "rung 2  11  -> ( S2 | NO Q1 ) -> NC Q2 -> coil Q1 -> 2",
                    "rung 3  11  -> ( S3 | NO Q2 ) -> NC Q1 -> coil Q2 -> 2",
                    "never Q1 and Q2 closed",
                ],
                [
                    "",
                    "rung 2  11  -> ( S2 | NO Q1 ) -> coil Q1 -> 2",
                    "rung 3  11  -> ( S3 | NO Q2 ) -> coil Q2 -> 2",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var supply in e.Supplies)
        foreach (var culprits in ShortCircuits.Within(e, supply))
            yield return e.Report(this, culprits.Devices)
                .Says(
                    $"{Evidence.List(culprits.Devices, "the wiring")} can join two conductors of {supply.Name}{e.Passing(culprits.States)}"
                )
                .After(culprits.States)
                .Along(culprits.Path)
                .Finding;
    }
}
