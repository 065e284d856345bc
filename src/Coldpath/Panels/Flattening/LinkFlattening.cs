using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>Rules of one device over others: a linkage that lets one of them be closed at a time, a declared pair.</summary>
internal sealed class LinkFlattening(Panel panel, Naming naming)
{
    public static IEnumerable<DevicePair> Pairs(Panel panel) =>
        from device in panel.Devices
        from link in device.Blueprint.Links
        where link.State is null
        select new DevicePair(link.Rule, link.Devices);

    public IEnumerable<Constraint> Constraints() =>
        from device in panel.Devices
        from link in device.Blueprint.Links
        where link.State is not null
        select new Constraint(device.Tag, link.Rule, AtMostOne(link));

    private Expression AtMostOne(LinkRule link)
    {
        var states = link
            .Devices.Distinct()
            .Select(panel.Find)
            .OfType<PlacedDevice>()
            .Select(d => StateOf(d, link.State!))
            .ToList();
        return Expression.AllOf(
            from i in Enumerable.Range(0, states.Count)
            from j in Enumerable.Range(i + 1, states.Count - i - 1)
            select Expression.Negate(Expression.AllOf(states[i], states[j]))
        );
    }

    /// <summary>Over variables alone: what closes an element takes the element's place.</summary>
    private Expression StateOf(PlacedDevice device, string state)
    {
        var guards = device.Blueprint.Network.Elements.ToDictionary(e => e.Id, e => e.Closed);
        var local = device.Blueprint.States.First(s => s.Key == state).Value;
        return naming[device.Tag].Of(Guarded(local, guards));
    }

    private static Expression Guarded(Expression state, Dictionary<string, Expression> guards) =>
        state switch
        {
            Closed closed => guards[closed.Element],
            Not not => Expression.Negate(Guarded(not.Term, guards)),
            All all => Expression.AllOf(all.Terms.Select(t => Guarded(t, guards))),
            Any any => Expression.AnyOf(any.Terms.Select(t => Guarded(t, guards))),
            _ => state,
        };
}
