using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

public enum Outcome
{
    /// <summary>It holds in every case, exactly.</summary>
    Proved,

    /// <summary>It does not: see the reason.</summary>
    Refuted,

    /// <summary>What it speaks of cannot happen, so it says nothing.</summary>
    Vacuous,

    /// <summary>The search was cut short; nothing is known.</summary>
    Bounded,
}

/// <summary>The answer to a question, with its reason.</summary>
public sealed record Verdict(Outcome Outcome)
{
    /// <summary>How it comes about: what refutes it, or for "can" what proves it.</summary>
    public Story? Story { get; init; }

    /// <summary>An assignment that refutes it, reachable or not; for "dead".</summary>
    public State? Assignment { get; init; }

    /// <summary>Nets that are live in <see cref="Assignment"/>.</summary>
    public IReadOnlyList<string> LiveNets { get; init; } = [];

    /// <summary>In which way a stop fails.</summary>
    public StopFailure? StopFailure { get; init; }

    /// <summary>
    /// Of searches that together cover all there is: what one shows is so, with the shortest of their stories; what
    /// none shows is not, unless one was cut short.
    /// </summary>
    public static Verdict OfParts(IntentForm form, IEnumerable<Verdict> parts)
    {
        var shown = form == IntentForm.Can ? Outcome.Proved : Outcome.Refuted;
        Verdict[] all = [.. parts];
        return all.Where(v => v.Outcome == shown)
                .OrderBy(v => v.ThroughUncertain)
                .ThenBy(v => v.Story?.Steps.Count(s => !s.Move.IsUrgent) ?? 0)
                .ThenBy(v => v.Story?.Steps.Count ?? 0)
                .FirstOrDefault()
            ?? all.FirstOrDefault(v => v.Outcome == Outcome.Bounded)
            ?? all.FirstOrDefault(v => v.Outcome != Outcome.Vacuous)
            ?? all[0];
    }

    /// <summary>The story rests on an uncertain coil: it is not certain that it can happen.</summary>
    public bool ThroughUncertain => Story is { ThroughUncertain: true };
}

/// <summary>How a control fails to stop a load.</summary>
public enum StopFailure
{
    /// <summary>In some state in which the load runs the control cannot be operated.</summary>
    CannotBeOperated,

    /// <summary>After it is operated the load goes on running.</summary>
    KeepsRunning,

    /// <summary>After all is let go the load runs again without a new start command.</summary>
    RunsAgain,

    /// <summary>The load can be running for good while the control is held.</summary>
    RunsWhileOperated,
}
