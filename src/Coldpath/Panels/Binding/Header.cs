using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>What the top of the file says of the panel as a whole.</summary>
internal sealed record Header(string Name, string? Drawing, string? Revision, PanelFacts System)
{
    private static readonly string[] RuleSets = ["NEC", "IEC"];

    public static Header Bind(PanelSyntax panel, BindingFindings findings)
    {
        var name = Only<PanelNameSyntax>(panel, "panel", findings);
        var drawing = Only<DrawingSyntax>(panel, "drawing", findings);
        var rules = Only<RulesSyntax>(panel, "rules", findings);
        var system = Only<SystemSyntax>(panel, "system", findings);
        var before = findings.Count;
        var facts = system is null ? new PanelFacts { Unclear = true } : SystemBinding.Bind(system, findings);
        facts = facts with { Unclear = facts.Unclear || findings.Count > before };
        ReportLate(panel, findings);
        ReportMissing(panel, name, "panel \"NAME\"", findings);
        ReportMissing(panel, rules, "rules NEC or rules IEC", findings);
        ReportMissing(panel, system, "system, with volts, phases, frequency and earthing", findings);
        return new Header(
            name?.Name.Text ?? "",
            drawing is null ? null : string.Join(' ', drawing.Number),
            drawing?.Revision?.Text,
            facts with
            {
                Rules = rules is null ? "IEC" : RulesOf(rules, findings),
            }
        );
    }

    private static T? Only<T>(PanelSyntax panel, string what, BindingFindings findings)
        where T : HeaderSyntax
    {
        var found = panel.Statements.OfType<T>().ToList();
        foreach (var again in found.Skip(1))
            findings.Add(
                Complaint.Header.At(again.Span, $"{what} is said twice") with
                {
                    Related = [new Label(found[0].Span, "first said here")],
                }
            );
        return found.FirstOrDefault();
    }

    /// <summary>A line that could not be read may have been the missing one.</summary>
    private static void ReportMissing(
        PanelSyntax panel,
        HeaderSyntax? line,
        string what,
        BindingFindings findings
    )
    {
        if (line is not null || panel.BrokenWords.Contains(what.Split(' ', ',')[0]))
            return;
        var start = new Span(panel.Span.Source, panel.Span.Start, panel.Span.Start);
        findings.Add(Complaint.Header.At(start, $"the header does not say {what}"));
    }

    private static void ReportLate(PanelSyntax panel, BindingFindings findings)
    {
        var late = panel
            .Statements.SkipWhile(s => s is HeaderSyntax or KindSyntax or BrokenSyntax)
            .OfType<HeaderSyntax>();
        foreach (var line in late)
            findings.Add(Complaint.Header.At(line.Span, "the header stands above everything but kinds"));
    }

    private static string RulesOf(RulesSyntax rules, BindingFindings findings)
    {
        if (RuleSets.Contains(rules.Rules.Text))
            return rules.Rules.Text;
        findings.Add(
            Complaint.Header.At(rules.Rules.Span, $"{rules.Rules} is no rule set that is known: NEC or IEC")
        );
        return "IEC";
    }
}
