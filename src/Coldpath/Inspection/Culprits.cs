using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>The switching devices whose contacts make something happen together.</summary>
/// <param name="Devices">Tags in declared order; empty when the wiring alone does it.</param>
/// <param name="States">The states in question in which all their contacts stand so.</param>
/// <param name="Path">The conducting path in the nearest of them.</param>
public sealed record Culprits(IReadOnlyList<string> Devices, Diagram States, IReadOnlyList<string> Path);

/// <summary>
/// Sorts bad states by who makes them: takes the nearest one, reads its conducting path, sets aside every state in
/// which the same contacts are closed, and goes on with the rest.
/// </summary>
public static class CulpritSearch
{
    /// <summary>More groups than this say nothing new to a reader.</summary>
    private const int Most = 12;

    /// <param name="evidence">The panel.</param>
    /// <param name="states">Reachable shorted states.</param>
    /// <param name="supply">The supply that is shorted in them.</param>
    public static IEnumerable<Culprits> In(Evidence evidence, Diagram states, string supply)
    {
        var table = evidence.Table;
        for (var found = 0; found < Most && evidence.Behaviour.ShortestTo(states) is { } story; found++)
        {
            var paths = new Trace(evidence.Network, story.End).Short(supply);
            var elements = paths.SelectMany(p => p.Steps).Distinct().ToArray();
            var switching = elements.Where(id => Switches(evidence, id)).ToArray();
            if (switching.Length == 0)
                switching = [.. elements.Where(id => IsContact(evidence.Devices.TryElement(id)))];
            var closed = table.AllOf(switching.Select(evidence.Network.Closed));
            var devices = evidence
                .Devices.All.Select(d => d.Tag)
                .Where(tag => switching.Any(id => evidence.Devices.Element(id).Device == tag));
            yield return new([.. devices], table.And(states, closed), [.. paths.SelectMany(evidence.Steps)]);
            states = table.Except(states, closed);
        }
    }

    private static bool IsContact(Element? element) =>
        element?.Type is ElementType.Contact or ElementType.Semiconductor;

    /// <summary>Contacts and semiconductors of anything but isolators and short-circuit devices, which feed and do no wrong.</summary>
    private static bool Switches(Evidence evidence, string id)
    {
        var element = evidence.Devices.Element(id);
        var device = evidence.Devices[element.Device];
        return IsContact(element) && device.Isolates is null && device.OpensOnShort.Count == 0;
    }
}
