using Coldpath.Circuit.Failures;
using Coldpath.Findings;

namespace Coldpath.Inspection.Checks;

public sealed class SingleFailureStartsMotor : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F701",
            Name = "single-failure-starts-motor",
            Family = Family.Failures,
            Severity = Severity.Danger,
            Title = "One failure starts a motor that nobody has told to start.",
            Why = "Whoever stands at the machine has no warning: no control was touched.",
            Reference = "IEC 60204-1, 9.4.1; NFPA 79, 9.4.1",
            Remedy = "put a second contact, from another device, in series with the one that fails",
            Limits = "earth faults and shorted semiconductors are checks of their own",
            Example = new(
                "failing",
                "rung 1 1 -> S0 -> ( S1 | NO K1 ) -> coil K1 -> 2",
                "rung 1 1 -> S0 -> ( S1 | NO K1 ) -> coil K1 -> 2"
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e) =>
        from motor in e.Motors
        from set in e.SingleFailures.Starting(motor)
        where SingleFailures.Sort(set) is FailureSort.Part or FailureSort.Broken
        select e.Report(this, [set.Members[0].Device, motor.Name])
            .Says($"{motor.Name} starts by itself when {FailureWords.Of(set.Members[0])}")
            .After(set.Story)
            .Finding;
}
