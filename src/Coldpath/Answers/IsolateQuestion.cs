using System.Globalization;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>Which isolating devices, opened and locked, make targets dead whatever else is operated, welded or shorted.</summary>
public sealed class IsolateQuestion
{
    /// <summary>As many sets are told when nothing else is asked for.</summary>
    public const int UsualMost = 20;

    /// <summary>
    /// Nodes for the diagrams of the sets, and as many for each question about one set: some seconds' work. Past it the
    /// answer is bounded.
    /// </summary>
    private const int MostNodes = 1 << 22;

    private readonly Evidence evidence;
    private readonly Isolators isolators;
    private readonly int nodes;

    /// <param name="evidence">The panel.</param>
    /// <param name="nodes">The node budget.</param>
    public IsolateQuestion(Evidence evidence, int nodes = MostNodes)
    {
        this.nodes = nodes;
        this.evidence = evidence;
        isolators = new Isolators(evidence.Whole.Netlist, evidence.BoundedTable(nodes))
        {
            Usual = [.. Usual(evidence)],
        };
    }

    /// <param name="targets">Points, all to be dead.</param>
    /// <param name="asked">The names that were asked for.</param>
    /// <param name="have">The asker's own set; null when there is none.</param>
    /// <param name="most">How many sets to tell.</param>
    public IsolateAnswer Ask(
        IReadOnlyList<Point> targets,
        IReadOnlyList<string> asked,
        IReadOnlyList<string>? have,
        int most = UsualMost
    )
    {
        var answer = new IsolateAnswer
        {
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Targets = asked,
            RestsOn = Doubtful.Parts(evidence.Panel),
            Assumed = evidence.Netlist.Assumed,
        };
        try
        {
            return Told(answer, targets, have, most);
        }
        catch (DiagramLimitException)
        {
            return Bounded(answer, have, "which sets isolate, or whether any does, is not known");
        }
    }

    private IsolateAnswer Told(
        IsolateAnswer answer,
        IReadOnlyList<Point> targets,
        IReadOnlyList<string>? have,
        int most
    )
    {
        var nets = targets.Select(p => p.Net).Distinct().ToArray();
        var sets = new IsolatingSets(isolators, nets);
        var ranked = RankedSets.Of(isolators, sets, most);
        var first = ranked.Best is [var best, ..] ? best.Select(a => a.Name).ToArray() : null;
        var chosen = have is null ? first : Counting(have);
        var enough = chosen is not null && sets.AreEnough(chosen) ? chosen : null;
        var told = answer with
        {
            Sets = [.. ranked.Best.Select(SetOf)],
            Count = ranked.Count,
            Stays = first is null ? Stays(sets, targets, AllActs) : null,
            Have = have is null ? null : Judge(sets, targets, have),
            StaysLive = [.. StaysLive(targets, have ?? first ?? [.. AllActs])],
            WholeOnly = enough is null ? [] : [.. WholeOnly(nets, targets, enough)],
        };
        return ranked.Count is null
            ? Bounded(
                told,
                null,
                "how many sets there are, and which is best, is not known; the one told isolates"
            )
            : told;
    }

    private IsolateAnswer Bounded(IsolateAnswer answer, IReadOnlyList<string>? have, string unknown) =>
        answer with
        {
            Complete = false,
            Incomplete =
            [
                .. answer.Incomplete,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"bounded: the search took more than {nodes:N0} diagram nodes; {unknown}"
                ),
            ],
            Have =
                answer.Have ?? (have is null ? null : new OwnSet { Devices = have, Enough = Verdict.Open }),
        };

    /// <summary>Those of the names that are isolating devices or stores.</summary>
    private string[] Counting(IReadOnlyList<string> names) => [.. names.Where(AllActs.Contains)];

    private IEnumerable<string> AllActs => isolators.Acts.Select(a => a.Name);

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
        var reaches = In(survival);
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
            select In(survival).Of(point);
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

    /// <summary>The points as they are in the one state, with what was done.</summary>
    private Reaches In(Survival survival)
    {
        var taken = isolators
            .Acts.Where(a => survival.Done.Contains(a.Name))
            .SelectMany(a => a.Device?.Isolates?.Elements ?? []);
        return new(evidence, evidence.Whole.Without(taken).At(survival.State), survival.State);
    }

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
