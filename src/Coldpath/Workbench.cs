using Coldpath.Answers;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Panels.Sites;
using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Reports.Text;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath;

/// <summary>
/// The questions that can be asked of a description, each answered from its text alone. Everything the command line
/// prints comes from here.
/// </summary>
public static class Workbench
{
    /// <summary>The tool's version.</summary>
    public const string Version = "0.1.0";

    /// <summary>Every check, by code.</summary>
    public static IReadOnlyList<Card> Cards => [.. Catalogue.All.Select(c => c.Card)];

    /// <param name="source">The description.</param>
    /// <param name="stop">Ends the work early.</param>
    /// <param name="failures">How many failures the checks that ask for failures reckon with.</param>
    public static CheckReport Check(SourceText source, CancellationToken stop, int failures = 1)
    {
        var opened = Opened.From(source, stop, failures);
        return opened.Evidence is { } evidence ? Inspector.Inspect(evidence, stop) : Unreadable(opened);
    }

    /// <summary>What is live after operations, from powered or from rest.</summary>
    /// <param name="source">The description.</param>
    /// <param name="operations">In order; a failure written as an operation happens in its turn.</param>
    /// <param name="fromRest">Begin with every isolator open.</param>
    /// <param name="failed">What has failed before anything is operated, as DEVICE=HOW.</param>
    /// <param name="stop">Ends the work early.</param>
    public static Answered<LiveAnswer> Live(
        SourceText source,
        IReadOnlyList<Operation> operations,
        bool fromRest,
        IReadOnlyList<Operation> failed,
        CancellationToken stop
    ) =>
        FailedPanel.Ask(
            source,
            failed,
            operations,
            [],
            (evidence, made) =>
            {
                var (answer, problem) = new LiveQuestion(evidence).Ask(made, fromRest);
                return new Answered<LiveAnswer>(
                    answer is null ? null : answer with { Assumed = [.. answer.Assumed, .. Failed(failed)] },
                    [],
                    problem
                );
            },
            stop
        );

    /// <summary>What makes a point live, or that nothing can.</summary>
    /// <param name="source">The description.</param>
    /// <param name="point">A terminal or named node.</param>
    /// <param name="failed">What has failed before anything is operated, as DEVICE=HOW.</param>
    /// <param name="stop">Ends the work early.</param>
    public static Answered<WhyAnswer> Why(
        SourceText source,
        string point,
        IReadOnlyList<Operation> failed,
        CancellationToken stop
    ) =>
        FailedPanel.Ask<WhyAnswer>(
            source,
            failed,
            [],
            [point],
            (evidence, _) =>
            {
                if (Targets.Find(evidence.Netlist, point) is not [var first, ..])
                    return Unknown<WhyAnswer>(evidence, point);
                var answer = new WhyQuestion(evidence).Ask(first);
                return answer with { Assumed = [.. answer.Assumed, .. Failed(failed)] };
            },
            stop
        );

    private static IEnumerable<string> Failed(IEnumerable<Operation> failed) =>
        failed.Select(f => $"{f.Variable} is taken to have failed before anything was operated: {f.Value}");

    /// <summary>Which failures suffice for a condition or undo a line, or all failures and how they show.</summary>
    /// <param name="source">The description.</param>
    /// <param name="question">
    /// A condition as an intent line has it behind <c>never</c>, or a <c>never</c>, <c>stops</c> or <c>dead</c> line; null
    /// asks for the failures themselves.
    /// </param>
    /// <param name="most">The most failures in a combination.</param>
    /// <param name="stop">Ends the work early.</param>
    public static Answered<FailuresAnswer> Failures(
        SourceText source,
        string? question,
        int most,
        CancellationToken stop
    )
    {
        if (AskedPanel.Problem(question) is { } problem)
            return new Answered<FailuresAnswer>(null, [], problem);
        var opened = AskedPanel.Open(source, question, stop);
        if (opened.Evidence is not { } evidence)
            return new Answered<FailuresAnswer>(null, opened.Findings);
        var asked = AskedPanel.Question(evidence, question);
        return new FailuresQuestion(evidence).Ask(asked, question, AskedPanel.IsLine(question), most);
    }

    /// <summary>What isolates targets.</summary>
    /// <param name="source">The description.</param>
    /// <param name="targets">Devices, terminals or places, all to be dead.</param>
    /// <param name="have">The asker's own set; null when there is none.</param>
    /// <param name="stop">Ends the work early.</param>
    /// <param name="most">How many sets to tell.</param>
    public static Answered<IsolateAnswer> Isolate(
        SourceText source,
        IReadOnlyList<string> targets,
        IReadOnlyList<string>? have,
        CancellationToken stop,
        int most = IsolateQuestion.UsualMost
    ) =>
        Ask<IsolateAnswer>(
            source,
            [.. targets, .. have ?? []],
            evidence =>
            {
                var unknown = targets
                    .Concat(have ?? [])
                    .FirstOrDefault(t => Targets.Find(evidence.Netlist, t).Count == 0);
                if (unknown is not null)
                    return Unknown<IsolateAnswer>(evidence, unknown);
                var points = targets.SelectMany(t => Targets.Find(evidence.Netlist, t)).Distinct();
                return new IsolateQuestion(evidence).Ask([.. points], targets, have, most);
            },
            stop
        );

    /// <summary>The panel as drawn sheets; the wiring alone when <paramref name="show"/> is null.</summary>
    public static Answered<Drawing> Draw(
        SourceText source,
        DrawRequest request,
        ShowRequest? show,
        CancellationToken stop
    ) =>
        SiteBinder.IsSite(PanelParser.Parse(source).Panel)
            ? new(null, [], "a site is drawn panel by panel: draw the files that it includes")
            : DrawPanel(source, request, show, stop);

    private static Answered<Drawing> DrawPanel(
        SourceText source,
        DrawRequest request,
        ShowRequest? show,
        CancellationToken stop
    ) =>
        show switch
        {
            ShowState state => Ask(source, [], evidence => DrawState(evidence, request, state), stop),
            ShowFinding finding => Ask(
                source,
                [],
                evidence => DrawFinding(evidence, request, finding, stop),
                stop
            ),
            _ => DrawWiring(source, request),
        };

    /// <summary>The canonical layout of a description.</summary>
    public static Answered<string> Format(SourceText source)
    {
        var parsed = PanelParser.Parse(source);
        if (parsed.Findings.Count > 0)
            return new(null, parsed.Findings);
        var numbers = PanelBinder.Bind(parsed, KindLibrary.Standard).Panel.AllocatedContacts;
        return PanelFormatter.Format(parsed.Panel, source, numbers);
    }

    /// <summary>The flattened panel as JSON, with every failure that the questions reckon with.</summary>
    public static Answered<string> Netlist(SourceText source)
    {
        var bound = Described.Bind(PanelParser.Parse(source), []);
        return bound.Netlist is { } netlist
            ? NetlistJson.ToText(netlist.WithCommonFailures(), indented: true) + "\n"
            : new Answered<string>(null, bound.Findings);
    }

    public static IReadOnlyList<string> KindNames => KindLibrary.Standard.Names;

    /// <summary>All standard kinds and what they are.</summary>
    public static Page Kinds()
    {
        var table = new Table("kind", "what it is");
        foreach (var name in KindNames)
            table.Add(Style.Plain, name, KindCompiler.Describe(KindLibrary.Standard.Find(name)!).Means ?? "");
        var page = new Page();
        table.WriteTo(page);
        return page;
    }

    /// <summary>A standard kind as it is written; null when there is none of that name.</summary>
    public static string? Kind(string name) => KindLibrary.Standard.TextOf(name);

    private static Answered<Drawing> DrawWiring(SourceText source, DrawRequest request)
    {
        var bound = PanelBinder.Bind(PanelParser.Parse(source), KindLibrary.Standard);
        return bound.Netlist is { } netlist
            ? Drafting.Draw(bound.Panel, netlist, request, Shown.Wiring)
            : new Answered<Drawing>(null, bound.Findings);
    }

    private static Answered<Drawing> DrawState(Evidence evidence, DrawRequest request, ShowState state)
    {
        var (answer, problem) = new LiveQuestion(evidence).Ask(state.Operations, state.FromRest);
        return answer is null
            ? new Answered<Drawing>(null, [], problem)
            : Drafting.Draw(
                evidence.Panel,
                evidence.Netlist,
                request,
                ShownState.Of(evidence, answer, state)
            );
    }

    private static Answered<Drawing> DrawFinding(
        Evidence evidence,
        DrawRequest request,
        ShowFinding finding,
        CancellationToken stop
    )
    {
        var report = Inspector.Inspect(evidence, stop);
        var (shown, problem) = ShownFinding.Of(evidence, report, finding.Name);
        return shown is null
            ? new Answered<Drawing>(null, [], problem)
            : Drafting.Draw(evidence.Panel, evidence.Netlist, request, shown);
    }

    private static Answered<T> Ask<T>(
        SourceText source,
        IReadOnlyCollection<string> names,
        Func<Evidence, Answered<T>> question,
        CancellationToken stop
    )
        where T : class
    {
        var opened = Opened.From(source, stop, names: names);
        return opened.Evidence is { } evidence ? question(evidence) : new(null, opened.Findings);
    }

    private static Answered<T> Unknown<T>(Evidence evidence, string name)
        where T : class
    {
        var near = SpellChecker.Nearest(name, Targets.Names(evidence.Netlist));
        return new(
            null,
            [],
            $"no device, terminal or place is called {name}{(near is null ? "" : $"; did you mean {near}?")}"
        );
    }

    internal static CheckReport Unreadable(SourceText source, IReadOnlyList<Finding> findings) =>
        new()
        {
            Source = source,
            Panel = source.Name,
            Readable = false,
            Complete = false,
            Incomplete = ["the description cannot be read as a site, so nothing was checked"],
            Findings = findings,
        };

    private static CheckReport Unreadable(Opened opened) =>
        new()
        {
            Source = opened.Source,
            Panel = opened.Bound.Panel.Name is { Length: > 0 } name ? name : opened.Source.Name,
            Readable = false,
            Complete = false,
            Incomplete = ["the description cannot be read as a panel, so nothing was checked"],
            Findings = opened.Findings,
        };
}
