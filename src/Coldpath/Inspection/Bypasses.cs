using Coldpath.Circuit.Diagrams;

namespace Coldpath.Inspection;

/// <summary>A contactor in a way that passes no semiconductor, of a load that has another way which does.</summary>
/// <param name="Motor">The load.</param>
/// <param name="Contactor">Its tag.</param>
/// <param name="Starter">The semiconductor's device.</param>
/// <param name="Neighbours">The other controllers of the starter's way: its line and output contactors.</param>
/// <param name="Carrying">States in which the bypass alone makes the load run.</param>
/// <param name="SideBySide">States in which the load sides of the two are joined.</param>
public sealed record Bypass(
    string Motor,
    string Contactor,
    string Starter,
    IReadOnlyList<string> Neighbours,
    Diagram Carrying,
    Diagram SideBySide
);

/// <summary>Finds the bypass contactors among the ways.</summary>
public static class Bypasses
{
    public static IEnumerable<Bypass> In(Evidence evidence) =>
        from motor in evidence.Motors
        let ways = evidence.Ways.Of(motor)
        from round in ways.Where(w => !w.Devices.Any(evidence.Devices.HasSemiconductor))
        from through in ways
        let starter = through.Devices.FirstOrDefault(evidence.Devices.HasSemiconductor)
        where starter is not null
        from contactor in round.Devices.Except(through.Devices)
        select new Bypass(
            motor.Name,
            contactor,
            starter,
            [.. through.Devices.Except(round.Devices).Where(tag => tag != starter)],
            round.States,
            SideBySide(evidence, contactor, starter)
        );

    /// <summary>Joined past the two themselves, which conduct.</summary>
    private static Diagram SideBySide(Evidence evidence, string contactor, string starter)
    {
        var poles = evidence.Devices.Poles(contactor).ToArray();
        var legs = evidence.Devices.Poles(starter).ToArray();
        var beside = evidence.Network.Without(poles.Concat(legs).Select(e => e.Id));
        return evidence.Table.AnyOf(from pole in poles from leg in legs select beside.Joined(pole.B, leg.B));
    }
}
