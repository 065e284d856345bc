using Coldpath.Circuit.Sequence;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>Which isolating devices, opened and locked, make targets dead whatever else is operated, welded or shorted.</summary>
public sealed class IsolateQuestion
{
    /// <summary>More sets than this help nobody who has to choose one.</summary>
    private const int Most = 20;

    private readonly Evidence evidence;
    private readonly Isolators isolators;

    public IsolateQuestion(Evidence evidence)
    {
        this.evidence = evidence;
        isolators = new Isolators(evidence.Whole.Netlist, new()) { Usual = [.. Usual(evidence)] };
    }

    /// <param name="targets">Points, all to be dead.</param>
    /// <param name="asked">The names that were asked for.</param>
    /// <param name="have">The asker's own set; null when there is none.</param>
    public IsolateAnswer Ask(
        IReadOnlyList<Point> targets,
        IReadOnlyList<string> asked,
        IReadOnlyList<string>? have
    )
    {
        var nets = targets.Select(p => p.Net).Distinct().ToArray();
        var sets = new IsolatingSets(isolators, nets);
        var best = sets.Cheapest(Cost).Take(Most).ToArray();
        var first = best.FirstOrDefault()?.Select(a => a.Name).ToArray();
        var chosen = have is null ? first : Counting(have);
        var enough = chosen is not null && sets.AreEnough(chosen) ? chosen : null;
        return new()
        {
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Targets = asked,
            Sets = [.. best.Select(SetOf)],
            Count = sets.Count,
            Stays = first is null ? Stays(sets, targets, AllActs) : null,
            Have = have is null ? null : Judge(sets, targets, have),
            StaysLive = [.. StaysLive(targets, have ?? first ?? [.. AllActs])],
            WholeOnly = enough is null ? [] : [.. WholeOnly(nets, targets, enough)],
            RestsOn = Doubtful.Parts(evidence.Panel),
            Assumed = evidence.Netlist.Assumed,
        };
    }

    /// <summary>Those of the names that are isolating devices or stores.</summary>
    private string[] Counting(IReadOnlyList<string> names) => [.. names.Where(AllActs.Contains)];

    private IEnumerable<string> AllActs => isolators.Acts.Select(a => a.Name);

    /// <summary>
    /// Fewest devices that need a further measure, then fewest that cannot be locked, then fewest without a visible
    /// break, then fewest locks.
    /// </summary>
    private static long Cost(IsolationAct act)
    {
        if (act.Device?.Isolates is not { } isolates)
            return 1;
        return 1
            + (isolates.Visible ? 0 : 100)
            + (isolates.Lockable ? 0 : 10_000)
            + (isolates.Rank > 1 ? 1_000_000 : 0);
    }

    private static IsolatingSet SetOf(IReadOnlyList<IsolationAct> acts) =>
        new(
            [.. acts.Select(a => a.Device).OfType<NetlistDevice>().Select(IsolatorOf)],
            [.. acts.Where(a => a.Store is not null).Select(Discharge)]
        );

    private static string Discharge(IsolationAct act) =>
        act.Store!.Discharge is { } time
            ? $"let {act.Name} discharge for {time}, then measure"
            : $"discharge {act.Name}: read the time on its label, then measure";

    private static Isolator IsolatorOf(NetlistDevice device) =>
        new(
            device.Tag,
            device.Place,
            device.Isolates!.Rank,
            device.Isolates.Lockable,
            device.Isolates.Visible
        );

    private OwnSet Judge(IsolatingSets sets, IReadOnlyList<Point> targets, IReadOnlyList<string> have)
    {
        var counting = Counting(have);
        var enough = sets.AreEnough(counting);
        var survival = enough ? null : sets.Survival(counting);
        return new()
        {
            Devices = have,
            Enough = enough ? Verdict.Yes : Verdict.No,
            NotIsolating =
            [
                .. have.Except(counting).Select(tag => $"{tag} is no isolating device and does not count"),
            ],
            Stays = survival is null ? null : Reached(survival, targets),
            Witness = survival is null ? [] : Witness(survival),
        };
    }

    private PointReach? Stays(IsolatingSets sets, IReadOnlyList<Point> targets, IEnumerable<string> taken) =>
        sets.Survival(taken) is { } survival ? Reached(survival, targets) : null;

    private PointReach? Reached(Survival survival, IReadOnlyList<Point> targets)
    {
        var reaches = new Reaches(evidence, Without(survival.Done), survival.State);
        return targets.Select(reaches.Of).FirstOrDefault(r => r.Reach != Reach.Dead);
    }

    /// <summary>Other points in the targets' places that may be live with the set taken out.</summary>
    private IEnumerable<PointReach> StaysLive(IReadOnlyList<Point> targets, IReadOnlyList<string> taken)
    {
        var places = targets.Select(p => p.Place).OfType<string>().ToHashSet();
        var open = Counting(taken);
        return from point in evidence.Netlist.Points
            where point.Place is { } place && places.Contains(place)
            let survival = isolators.StaysLive(point.Net, open)
            where survival is not null
            select new Reaches(evidence, Without(survival.Done), survival.State).Of(point);
    }

    private IEnumerable<WholeOnly> WholeOnly(
        string[] nets,
        IReadOnlyList<Point> targets,
        IReadOnlyList<string> taken
    ) =>
        from part in isolators.OnlyWhileWhole(nets, taken)
        select new WholeOnly(
            part,
            [.. targets.Select(p => p.Name)],
            $"test {Evidence.Some(targets.Select(p => p.Name))} to {evidence.Words.Earth} and to each other conductor"
        );

    private Circuit.Conduction.Network Without(IEnumerable<string> taken) =>
        evidence.Whole.Without(
            isolators
                .Acts.Where(a => taken.Contains(a.Name))
                .SelectMany(a => a.Device?.Isolates?.Elements ?? [])
        );

    /// <summary>The positions that matter: what differs from powered, isolators aside.</summary>
    private IReadOnlyList<KeyValuePair<string, string>> Witness(Survival survival)
    {
        var taken = survival.Done.ToHashSet();
        return
        [
            .. evidence
                .Whole.Netlist.Variables.Select((v, i) => (Variable: v, Index: i))
                .Where(p =>
                    survival.State[p.Index] != isolators.Usual![p.Index] && !taken.Contains(p.Variable.Device)
                )
                .Select(p =>
                    KeyValuePair.Create(p.Variable.Name, p.Variable.Values[survival.State[p.Index]])
                ),
        ];
    }

    /// <summary>Each variable's value when powered; a failure's at rest.</summary>
    private static IEnumerable<int> Usual(Evidence evidence)
    {
        var powered = evidence.Behaviour.Powered;
        return evidence.Whole.Netlist.Variables.Select(v =>
            v.Kind == VariableKind.Failure
                ? evidence.Whole.States.IndexOfValue(v.Name, v.Rest)
                : powered[evidence.Behaviour.Space.IndexOf(v.Name)]
        );
    }
}
