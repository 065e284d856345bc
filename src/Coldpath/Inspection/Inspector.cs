using System.Numerics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>Puts every check to the evidence and gathers what they say.</summary>
public static class Inspector
{
    /// <param name="evidence">What it amounts to.</param>
    /// <param name="stop">Ends the work early; the report then says that it is not complete.</param>
    public static CheckReport Inspect(Evidence evidence, CancellationToken stop) =>
        Inspect(evidence, Catalogue.All, stop);

    /// <param name="evidence">What it amounts to.</param>
    /// <param name="checks">Those to be made.</param>
    /// <param name="stop">Ends the work early; the report then says that it is not complete.</param>
    public static CheckReport Inspect(Evidence evidence, IReadOnlyList<Check> checks, CancellationToken stop)
    {
        var findings = new List<Finding>();
        var made = new List<string>();
        var notMade = new List<NotChecked>();
        var incomplete = new List<string>();
        foreach (var check in checks)
        {
            try
            {
                stop.ThrowIfCancellationRequested();
                findings.AddRange(check.Look(evidence));
                if (check.Lacks(evidence) is { } reason)
                    notMade.Add(new(check.Card.Name, reason));
                else
                    made.Add(check.Card.Name);
            }
            catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
            {
                notMade.Add(new(check.Card.Name, "the search was cut short"));
                incomplete.Add($"{check.Card.Name} was not finished");
            }
        }
        var unused = Catalogue.Find("waiver-unused")!.Card;
        Finding[] judged = [.. InOrder(Waivers.Apply(evidence.Panel, Subsumption.Merge(findings), unused))];
        incomplete.AddRange(Doubts(judged));
        var states = Unless(
            incomplete,
            () => (BigInteger?)evidence.Behaviour.Space.Count(evidence.Reachable)
        );
        var followed = Unless(incomplete, () => Followed(evidence).ToArray()) ?? [];
        var proved = Unless(
            incomplete,
            () => evidence.Intents.Where(v => v.Proved).Select(v => v.Sentence).ToArray()
        );
        return new()
        {
            Source = evidence.Source,
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Complete = incomplete.Count == 0,
            Incomplete = [.. incomplete.Distinct()],
            States = states,
            Failures = evidence.Failures,
            CanFail = evidence.AllFailures.Count,
            Findings = judged,
            ChecksMade = made,
            NotChecked = notMade,
            Proved = proved ?? [],
            Assumed = [.. evidence.Netlist.Assumed, .. followed],
        };
    }

    /// <summary>What is asked, unless the search is cut short.</summary>
    private static T? Unless<T>(List<string> incomplete, Func<T> ask)
    {
        try
        {
            return ask();
        }
        catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
        {
            incomplete.Add("not every state was found");
            return default;
        }
    }

    /// <summary>By place, then by code: the order of the text, whatever order the checks came in.</summary>
    private static IEnumerable<Finding> InOrder(IEnumerable<Finding> findings) =>
        findings
            .OrderBy(f => f.Location.Start)
            .ThenBy(f => f.Code, StringComparer.Ordinal)
            .ThenBy(f => f.Message, StringComparer.Ordinal);

    /// <summary>Findings that hang on a coil whose pull-in only a circuit calculation could decide.</summary>
    private static IEnumerable<string> Doubts(IEnumerable<Finding> findings) =>
        findings
            .Where(f => f.Uncertain && f.Waived is null)
            .Select(f =>
                $"{f.Name} on {Evidence.List(f.Devices)} rests on a coil whose pull-in is uncertain"
            );

    /// <summary>Coils that were followed both ways: what is proved holds whatever they do.</summary>
    private static IEnumerable<string> Followed(Evidence evidence)
    {
        var judged = DevicesOf(evidence, evidence.Behaviour.JudgedVariables);
        if (judged.Length > 0)
            yield return $"what {Evidence.List(judged)} get through other loads was calculated, with the usual burdens where none are given";
        var devices = DevicesOf(evidence, evidence.Behaviour.UncertainVariables);
        if (devices.Length > 0)
            yield return $"with a conductor lost {Evidence.List(devices)} may pull in, hold or drop: both were followed";
    }

    private static string[] DevicesOf(Evidence evidence, IEnumerable<int> variables) =>
        [.. variables.Select(v => evidence.Netlist.Variables[v].Device).Distinct()];
}
