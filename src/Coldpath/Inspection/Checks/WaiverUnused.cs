using Coldpath.Findings;

namespace Coldpath.Inspection.Checks;

public sealed class WaiverUnused : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "N603",
            Name = "waiver-unused",
            Family = Family.Intent,
            Severity = Severity.Caution,
            Title = "A waiver covers no finding.",
            Why = "It was written for something that is no longer there, and would hide it if it came back.",
            Reference = "the description itself",
            Remedy = "take the waiver out, or mend its name or device",
            Example = new(
                "direct-on-line",
                "stops M1 by S1",
                "stops M1 by S1\nwaive chatter on Q1 because \"it never does\""
            ),
        };

    /// <summary>Nothing by itself: what is unused shows when all other checks have spoken.</summary>
    public override IEnumerable<Finding> Look(Evidence e) => [];
}
