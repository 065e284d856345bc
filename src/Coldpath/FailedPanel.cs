using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath;

/// <summary>A panel in which named parts have failed before anything is operated, or fail on the way.</summary>
internal sealed class FailedPanel
{
    private readonly SourceText source;
    private readonly BoundResult bound;
    private readonly IReadOnlySet<string> known;

    private FailedPanel(SourceText source, IReadOnlyCollection<string> names)
    {
        this.source = source;
        bound = Described.Bind(PanelParser.Parse(source), names);
        known = bound.Netlist?.NamedFailures().ToHashSet() ?? [];
    }

    /// <summary>Puts a question to the panel.</summary>
    /// <param name="source">The description.</param>
    /// <param name="failed">What has failed, as DEVICE=HOW.</param>
    /// <param name="operations">What is operated; a failure among them happens then.</param>
    /// <param name="about">What else is asked about.</param>
    /// <param name="question">Gets the evidence, and the operations with failures by their variables.</param>
    /// <param name="stop">Ends the work early.</param>
    public static Answered<T> Ask<T>(
        SourceText source,
        IReadOnlyList<Operation> failed,
        IReadOnlyList<Operation> operations,
        IReadOnlyCollection<string> about,
        Func<Evidence, IReadOnlyList<Operation>, Answered<T>> question,
        CancellationToken stop
    )
        where T : class
    {
        string[] names = [.. failed.Concat(operations).Select(o => o.Variable), .. about];
        var panel = new FailedPanel(source, names);
        if (panel.bound.Netlist is not { } netlist)
            return new(null, panel.bound.Findings);
        if (failed.FirstOrDefault(f => !panel.known.Contains(NameOf(f))) is { } unknown)
            return new(null, [], panel.Unknown(unknown));
        Operation[] made = [.. operations.Select(panel.Made)];
        var happening = made.Select(o => o.Variable).Where(panel.known.Contains);
        return question(panel.Evidence(netlist, [.. failed.Select(NameOf)], [.. happening], stop), made);
    }

    /// <summary>"K1=jams" is the failure K1.jams.</summary>
    private static string NameOf(Operation failure) => $"{failure.Variable}.{failure.Value}";

    private Operation Made(Operation operation) =>
        known.Contains(NameOf(operation)) ? new(NameOf(operation), FailureVariable.Yes) : operation;

    private Evidence Evidence(
        Netlist netlist,
        HashSet<string> failed,
        HashSet<string> happening,
        CancellationToken stop
    )
    {
        var failing = netlist.WithFailures(failed.Union(happening).ToHashSet());
        var begun = failing with { Variables = [.. Begun(failing.Variables, failed)] };
        var pinned = begun.AtRest(failed);
        var left = pinned with { Variables = [.. pinned.Variables.Where(v => !failed.Contains(v.Name))] };
        return new(source, bound.Panel, left, Behaviour.Judged(left, stop), stop: stop);
    }

    /// <summary>Failed from the start; a part that can stick only away from rest stands away from rest.</summary>
    private static IEnumerable<Variable> Begun(IReadOnlyList<Variable> variables, HashSet<string> failed)
    {
        var away = variables
            .Where(v => failed.Contains(v.Name))
            .Select(v => v.Moves[0].When)
            .OfType<Not>()
            .Select(occasion => occasion.Term)
            .OfType<VariableIs>()
            .ToHashSet();
        foreach (var variable in variables)
            if (failed.Contains(variable.Name))
                yield return variable with
                {
                    Rest = FailureVariable.Yes,
                };
            else if (away.Contains(new VariableIs(variable.Name, variable.Rest)))
                yield return variable with
                {
                    Rest = variable.Values.First(v => v != variable.Rest),
                };
            else
                yield return variable;
    }

    private string Unknown(Operation failure)
    {
        var name = NameOf(failure);
        var own = known.Where(k => k.StartsWith(failure.Variable + ".", StringComparison.Ordinal)).ToArray();
        var ways = own.Select(k => k[(failure.Variable.Length + 1)..]);
        return own.Length > 0
                ? $"{failure.Variable} cannot fail as '{failure.Value}'; it has {Inspection.Evidence.List(ways)}"
            : SpellChecker.Nearest(name, known) is { } near
                ? $"nothing called {failure.Variable} can fail; did you mean {near.Replace('.', '=')}?"
            : $"nothing called {failure.Variable} can fail: 'coldpath failures FILE' lists what can";
    }
}
