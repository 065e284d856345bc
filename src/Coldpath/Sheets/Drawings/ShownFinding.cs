using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>A finding as a drawing shows it: the nets of its path and points, and the devices that it names.</summary>
internal static class ShownFinding
{
    /// <returns>What is shown, or null and why there is nothing to show.</returns>
    public static (Shown? Shown, string? Problem) Of(Evidence evidence, CheckReport report, string name)
    {
        var meant = report.Findings.Where(f => f.Code == name || f.Name == name).ToList();
        return meant.Count > 0
            ? (Of(evidence, meant[0], meant.Count), null)
            : (null, $"check does not find {name} here{Instead(report, name)}");
    }

    private static Shown Of(Evidence evidence, Finding finding, int count)
    {
        var more = count > 1 ? $" (the first of {count})" : "";
        return new()
        {
            Caption = $"{finding.Code} {finding.Name}: {finding.Message}{more}",
            Nets = NetsOf(evidence, finding).Distinct().ToDictionary(n => n, _ => Tone.Marked),
            Marked = finding.Devices.Concat(OnPath(evidence, finding)).ToHashSet(StringComparer.Ordinal),
        };
    }

    private static IEnumerable<string> NetsOf(Evidence evidence, Finding finding)
    {
        var netlist = evidence.Netlist;
        var named = finding.Path.Concat(finding.Points).ToHashSet(StringComparer.Ordinal);
        var conductors =
            from s in netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output))
            from c in s.Conductors
            where named.Contains($"{s.Name} {c.Name}")
            select c.Net;
        return netlist
            .Points.Where(p => named.Contains(p.Name))
            .Select(p => p.Net)
            .Concat(conductors)
            .Concat(Passed(evidence, finding).SelectMany(e => new[] { e.A, e.B }));
    }

    private static IEnumerable<string> OnPath(Evidence evidence, Finding finding) =>
        Passed(evidence, finding).Select(e => e.Device).Where(d => d.Length > 0);

    private static IEnumerable<Element> Passed(Evidence evidence, Finding finding)
    {
        var path = finding.Path.Select(Bare).SelectMany(Either).ToHashSet(StringComparer.Ordinal);
        return evidence.Netlist.Elements.Where(e => path.Contains(evidence.ElementName(e.Id)));
    }

    /// <summary>"K1:23-24" of "K1:23-24 (39 mA)".</summary>
    private static string Bare(string step) =>
        step.IndexOf(" (", StringComparison.Ordinal) is > 0 and var end ? step[..end] : step;

    /// <summary>A current passes "K1:24-23", which is written "K1:23-24".</summary>
    private static IEnumerable<string> Either(string step)
    {
        yield return step;
        var ends = step[(step.IndexOf(':', StringComparison.Ordinal) + 1)..];
        if (ends.Split('-') is [var from, var to])
            yield return $"{step[..^ends.Length]}{to}-{from}";
    }

    private static string Instead(CheckReport report, string name)
    {
        var found = report.Findings.Select(f => f.Name).Distinct().ToList();
        if (found.Count == 0)
            return ": it finds nothing";
        return SpellChecker.Nearest(name, found.Concat(report.Findings.Select(f => f.Code))) is { } near
            ? $"; did you mean {near}?"
            : $"; it finds {Evidence.List(found)}";
    }
}
