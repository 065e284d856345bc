using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class UnprotectedShort : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E103",
            Name = "unprotected-short",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "A short circuit can stand that no fuse or breaker clears.",
            Why = "With nothing in the way the current lasts until something burns open.",
            Reference = "NEC 110.10; IEC 60204-1, 7.2",
            Remedy = "put a short-circuit device into each unearthed conductor ahead of the place",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2\nT1:X1 -> NO K1 -> T1:X2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var culprits in ShortCircuits.Unprotected(e))
            yield return e.Report(this, culprits.Devices)
                .Says(
                    $"a short through {Evidence.List(culprits.Devices, "the wiring")} passes no fuse or breaker"
                )
                .After(culprits.States)
                .Along(culprits.Path)
                .Finding;
    }
}
