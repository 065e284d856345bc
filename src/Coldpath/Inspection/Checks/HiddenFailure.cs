using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class HiddenFailure : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F706",
            Name = "hidden-failure",
            Family = Family.Failures,
            Severity = Severity.Caution,
            Title =
                "What is meant to stand one failure has one that no single operation shows, and the next one defeats it.",
            Why = "Two of everything help only as long as somebody learns that one of the two is gone.",
            Reference = "ISO 13849-1 (category 3 and 4); IEC 60204-1, 9.4.2.3",
            Remedy =
                "let the start depend on a break contact of the part, mirrored or mechanically linked, or show it by a lamp",
            Limits =
                "asked of every 'even with 1 failure' line; lamps, motors, fuses, controls and the indicators of safety relays, monitors, soft starters and drives are what is seen, after one operation at a time",
            Example = new(
                "two-contactors",
                [
                    "rung 2  10  -> S0:11-12 -> ( S1:13-14 -> NC Q1 -> NC Q2 | NO K1 ) -> coil K1 -> 2",
                    "rung 3  10  -> S0:21-22 -> ( S1:23-24 -> NC Q1 -> NC Q2 | NO K2 ) -> coil K2 -> 2",
                ],
                [
                    "rung 2  10  -> S0:11-12 -> ( S1:13-14 | NO K1 ) -> coil K1 -> 2",
                    "rung 3  10  -> S0:21-22 -> ( S1:23-24 | NO K2 ) -> coil K2 -> 2",
                ]
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e) =>
        from judged in e.Intents
        where judged is { Proved: true, Intent.Failures: 1 }
        from found in e.HiddenFailures.Behind(judged)
        select e.Report(this, [found.Hidden.Device, .. judged.Devices])
            .Says(
                $"no single operation shows that {FailureWords.Of(found.Hidden)}; "
                    + $"when then {FailureWords.Of(found.Next)}, it is not so: {judged.Sentence}"
            )
            .After(found.Story)
            .Finding;
}
