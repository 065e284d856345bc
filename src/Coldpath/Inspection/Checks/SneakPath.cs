using Coldpath.Circuit.Phasors;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class SneakPath : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L410",
            Name = "sneak-path",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title =
                "A coil is pulled in or held, or a lamp lit, by current that comes through another load or backwards through a contact.",
            Why =
                "A device works that nobody has called: it starts by itself, it does not let go when it is told to, or a lamp says what is not so.",
            Reference = "common practice (sneak circuit analysis); coil limits IEC 60947-4-1, 8.2.1.2",
            Remedy =
                "part the circuits that the current comes across: a contact or a blocking diode of its own for each, a return of its own for each load",
            Limits =
                "Where the burden of a coil or lamp is not given, the usual range is taken; voltages that pass a motor's windings or a supply that is off are not known and are left out. Every supply is taken as present and every fuse as whole.",
            Example = new(
                "direct-on-line",
                ["lamp                 P1    green \"running\"", "rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                [
                    "lamp                 P1    green \"running\"\nlamp                 P2    red \"ready\", 120 V",
                    "rung 3  11  -> NO Q1 -> node 12 -> coil K1 -> 2\nrung 5  11  -> P2 -> 12",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var sneak in Sneaks.ThroughLoads(e))
            yield return e.Report(
                    this,
                    [sneak.Armature.Device, .. Between(e, sneak.Path, sneak.Armature.Device)]
                )
                .Says(Sentence(e, sneak))
                .Grade(sneak.Sure ? Severity.Defect : Severity.Caution)
                .After(sneak.States)
                .Ends(VoltageWords.Of(sneak.Reading, sneak.Armature.Device))
                .Along(e.Steps(sneak.Path))
                .Finding;
        foreach (var reverse in ReverseContacts.Of(e))
            yield return e.Report(this, [reverse.Armature.Device, reverse.Contact.Device])
                .Says(
                    $"{reverse.Armature.Device} pulls in by current that flows backwards through {e.ElementName(reverse.Contact.Id)}"
                )
                .After(reverse.States)
                .Along(e.Steps(Sneaks.PathOf(e, reverse.Armature, reverse.State)))
                .Finding;
        foreach (var lamp in Lamps(e))
            yield return lamp;
    }

    /// <summary>Lamps that tell a lie.</summary>
    private IEnumerable<Finding> Lamps(Evidence e) =>
        from glowing in GlowingLamps.Of(e)
        let device = glowing.Lamp.Device
        let others = Between(e, glowing.Path, device).ToArray()
        select e.Report(this, [device, .. others])
            .Says($"{device} is lit by current that comes through {Evidence.List(others, "other loads")}")
            .Grade(Severity.Caution)
            .After(glowing.States)
            .Ends(VoltageWords.Of(glowing.Reading, device, "lamp"))
            .Along(e.Steps(glowing.Path))
            .Finding;

    private static string Sentence(Evidence e, Sneak sneak)
    {
        var device = sneak.Armature.Device;
        var act = (sneak.Holds, sneak.Sure) switch
        {
            (false, true) => "pulls in",
            (false, false) => "may pull in",
            (true, true) => "is held in",
            (true, false) => "may be held in",
        };
        return $"{device} {act} by current that comes through {Evidence.List(Between(e, sneak.Path, sneak.Armature.Device), "other loads")}";
    }

    /// <summary>The devices whose loads, transformers or diodes the current passes on its way, its own left out.</summary>
    private static IEnumerable<string> Between(Evidence e, CurrentPath path, string own) =>
        path
            .Steps.Select(s => (s.Name, Element: e.Devices.TryElement(s.Name)))
            .Where(s =>
                s.Element is null or { Type: ElementType.Load or ElementType.Diode or ElementType.Series }
            )
            .Select(s => s.Element?.Device ?? s.Name)
            .Where(device => device != own && e.Devices.Known(device))
            .Distinct();
}
