using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection;

/// <summary>Searches of a panel in which parts fail, each made once.</summary>
internal sealed class FailureSearches
{
    private readonly Netlist whole;
    private readonly CancellationToken stop;
    private readonly Lazy<IReadOnlyList<string>> all;
    private readonly Lazy<IReadOnlyList<FailureSearch>> single;
    private readonly Lazy<IReadOnlyList<Behaviour>> none;
    private readonly Dictionary<string, Behaviour> judged = [];

    /// <param name="whole">The panel's netlist with its kinds' own failures.</param>
    /// <param name="stop">Ends searches early.</param>
    public FailureSearches(Netlist whole, CancellationToken stop)
    {
        this.whole = whole;
        this.stop = stop;
        all = new(whole.AllFailures);
        single = new(() =>
            [
                .. FailureParts
                    .OfOneSort(whole)
                    .Select(of => new FailureSearch(of.Sort, () => Search(of.Part, most: 1))),
            ]
        );
        none = new(() => [.. Parts(0).Select(part => Search(part, most: 0))]);
    }

    /// <summary>Every failure there is, those of coils, controls and control wires too, in declared order.</summary>
    public IReadOnlyList<string> All => all.Value;

    /// <summary>One search for each few parts of one sort; together they cover every single failure.</summary>
    public IReadOnlyList<FailureSearch> Single => single.Value;

    /// <summary>One search for each few parts; together they cover every combination of so many.</summary>
    public IEnumerable<Behaviour> Failing(int most) =>
        most switch
        {
            1 when Single.Count > 0 => Single.Select(search => search.Behaviour),
            0 or 1 => none.Value,
            _ => Parts(most).Select(part => Search(part, most)),
        };

    /// <summary>What the panel can do while just these may fail, uncertain coils put to the solver.</summary>
    public Behaviour Judged(IReadOnlyCollection<string> failures)
    {
        var name = string.Join(' ', failures);
        if (!judged.TryGetValue(name, out var behaviour))
        {
            behaviour = Behaviour.Judged(whole.WithFailures(failures.ToHashSet()), stop, failures.Count);
            judged.Add(name, behaviour);
        }
        return behaviour;
    }

    /// <summary>The answer to a line of the whole netlist; what only an uncertain coil refutes is put to the solver.</summary>
    public Verdict Answer(Intent intent)
    {
        // A search speaks of its own failures only: its line is the one without the others.
        var line = whole.Intents.Index().First(i => ReferenceEquals(i.Item, intent)).Index;
        var verdict = Of(Failing(intent.Failures));
        return verdict.ThroughUncertain
            ? Of(Parts(intent.Failures).Select(part => Behaviour.Judged(part, stop, intent.Failures)))
            : verdict;

        Verdict Of(IEnumerable<Behaviour> behaviours) =>
            Verdict.OfParts(
                intent.Form,
                behaviours.Select(part => new Questions(part).Answer(part.Netlist.Intents[line]))
            );
    }

    private IEnumerable<Netlist> Parts(int most) => FailureParts.Of(whole, most);

    private Behaviour Search(Netlist part, int most) => new(part, new DiagramTable(cancellation: stop), most);
}
