using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class RestartByItself : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E113",
            Name = "restart-by-itself",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "A motor starts again by itself when power returns or a trip resets itself.",
            Why = "Whoever has gone to look why it stopped stands next to it when it starts.",
            Reference = "IEC 60204-1, 7.3.1 and 7.5; NFPA 79, 7.3.1 and 7.5; NEC 430.43",
            Remedy =
                "seal the start in with a contact that power loss opens, and let the trip be reset by hand",
            Limits = "a selector that stays at its position is taken as meant, and gives a note",
            Example = new(
                "direct-on-line",
                [
                    "push button          S2    start",
                    "rung 2  11  -> ( S2 | NO Q1 ) -> coil Q1 -> 2",
                    "stops M1 by S1",
                ],
                ["selector             S2    OFF | ON", "rung 2  11  -> S2 at ON -> coil Q1 -> 2", ""]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        var restarting = new Restarting(e.Behaviour);
        foreach (var motor in e.Motors)
        foreach (var (index, variable) in e.Netlist.Variables.Index())
            if (Cause(e, variable) is { } cause)
                if (restarting.Of(e.Runs(motor), index, t => t.Cause == cause) is var (states, story))
                    yield return Told(e, motor, variable, states, story);
    }

    /// <summary>What moves a whole supply, or a trip that goes back without a hand; null for all else.</summary>
    private static Cause? Cause(Evidence e, Variable variable) =>
        IsWholeSupply(e, variable) ? Circuit.Sequence.Cause.Process
        : variable.Kind == VariableKind.Trip && ResetsItself(variable) ? Circuit.Sequence.Cause.Trip
        : null;

    private static bool IsWholeSupply(Evidence e, Variable variable) =>
        e.Netlist.Supplies.Any(s => Guards.Variables(s.Present).Contains(variable.Name));

    private static bool ResetsItself(Variable variable) =>
        variable.Moves.Any(m => m.By == Mover.Trip && m.To == variable.Rest);

    private Finding Told(Evidence e, Load motor, Variable variable, Diagram states, Story story)
    {
        var kept = Kept(e, states);
        var when =
            variable.Kind == VariableKind.Trip
                ? $"{variable.Device} resets itself"
                : $"{variable.Device} returns";
        return e.Report(this, [motor.Name, variable.Device, .. kept])
            .Grade(kept.Length > 0 ? Severity.Note : Severity.Danger)
            .Says(
                $"{motor.Name} starts again by itself when {when}"
                    + (kept.Length > 0 ? $": {Evidence.List(kept)} still asks for it" : "")
            )
            .After(story)
            .Finding;
    }

    /// <summary>Controls that stay where they are put and stand away from rest in all of the states.</summary>
    private static string[] Kept(Evidence e, Diagram states) =>
        [
            .. e
                .Netlist.Variables.Where(v =>
                    v is { Kind: VariableKind.Position, Momentary: false, Device.Length: > 0 }
                )
                .Where(v => e.Devices[v.Device].Use is ControlUse.Start or ControlUse.Mode)
                .Where(v => !e.Table.Meet(states, e.Is(v, v.Rest)))
                .Select(v => v.Device)
                .Distinct(),
        ];
}
