using Coldpath.Findings;
using Coldpath.Panels;

namespace Coldpath.Inspection;

/// <summary>Accepts findings for the reasons that the description gives.</summary>
public static class Waivers
{
    /// <summary>
    /// The findings with the reason on those that a waiver covers, and one more for each waiver that covers none.
    /// </summary>
    public static IEnumerable<Finding> Apply(Panel panel, IEnumerable<Finding> findings, Card unused)
    {
        var used = new HashSet<Waiver>();
        foreach (var finding in findings)
        {
            var waiver = panel.Waivers.FirstOrDefault(w => Covers(w, finding));
            if (waiver is not null)
                used.Add(waiver);
            yield return finding with
            {
                Waived = waiver?.Because,
            };
        }
        foreach (var waiver in panel.Waivers.Where(w => !used.Contains(w)))
            yield return Unused(waiver, unused);
    }

    private static bool Covers(Waiver waiver, Finding finding) =>
        (waiver.Check == finding.Name || waiver.Check == finding.Code)
        && waiver.On.Any(on => finding.Devices.Contains(on) || finding.Points.Contains(on));

    private static Finding Unused(Waiver waiver, Card card) =>
        new()
        {
            Code = card.Code,
            Name = card.Name,
            Severity = card.Severity,
            Message = $"nothing to waive: there is no {waiver.Check} on {Evidence.List(waiver.On)}",
            Location = waiver.Span,
            Devices = waiver.On,
            Reference = card.Reference,
            Remedy = card.Remedy,
        };
}
