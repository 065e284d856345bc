using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class EarthedConductorSwitched : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L408",
            Name = "earthed-conductor-switched",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "An earthed conductor is switched or fused alone.",
            Why =
                "What is beyond stays live from the other side and looks off, and an earth fault can bridge the contact.",
            Reference = "NEC 240.22 and 404.2(B); IEC 60204-1, 9.4.3; NFPA 79, 8.3",
            Remedy = "switch the unearthed conductor, or open both together",
            Limits =
                "An overload contact on the earthed side is a note: accepted where its wire stays inside the enclosure.",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 3  11  -> coil K1 -> NO Q1 -> 2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var found in EarthedConductors.Breaks(e))
            yield return e.Report(this, [found.Device])
                .Points([found.Element])
                .Grade(found.ByTripOnly ? Severity.Note : Severity.Defect)
                .Says($"{found.Element} opens the {e.Words.Earthed} conductor {found.Conductor} alone")
                .Finding;
    }
}
