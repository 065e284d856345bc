using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>What an intent line excludes, and the failures that bring it about.</summary>
public static class Hazard
{
    /// <summary>
    /// The minimal sets of failures with which the line does not hold. Of "dead" only states that are reached count; of
    /// "can", which excludes nothing, there are none.
    /// </summary>
    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="line">One of its own lines.</param>
    public static IReadOnlyList<FailureSet> Sets(Behaviour behaviour, Intent line) =>
        line.Form switch
        {
            IntentForm.Never => new CutSets(behaviour).Of(Excluded(behaviour, line)),
            IntentForm.Dead => new CutSets(behaviour).Of(LiveThough(behaviour, line)),
            IntentForm.Stops => NotStopping(behaviour, line),
            _ => [],
        };

    private static Diagram Excluded(Behaviour behaviour, Intent line) =>
        behaviour.Table.And(
            behaviour.Of(line.When),
            line.Settled ? behaviour.ReachableSettled : behaviour.Reachable
        );

    private static Diagram LiveThough(Behaviour behaviour, Intent line) =>
        behaviour.Table.And(
            behaviour.Of(line.When),
            behaviour.Table.AnyOf(Terminals.Of(behaviour.Netlist, line.Of!).Select(behaviour.Network.Live))
        );

    /// <summary>Surely; and where an uncertain coil pulls or holds.</summary>
    private static IReadOnlyList<FailureSet> NotStopping(Behaviour behaviour, Intent line)
    {
        var sure = Refuting(uncertainToo: false);
        return behaviour.RestsOnUncertain
            ? FailureSet.Minimal([.. sure, .. Refuting(uncertainToo: true)])
            : FailureSet.Minimal(sure);

        IEnumerable<FailureSet> Refuting(bool uncertainToo) =>
            StopQuestion
                .Of(behaviour, line, uncertainToo)
                .Refutations()
                .SelectMany(r => CutSets.In(behaviour, r.States, r.Phases, uncertainToo));
    }
}
