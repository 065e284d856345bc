using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Wires outside a panel that join two nets of that one panel.</summary>
internal static class Jumpers
{
    /// <param name="ends">Joints, and the panel's nets at them.</param>
    public static IReadOnlyList<Element> Of(IEnumerable<(string Joint, string Net)> ends) =>
        [
            .. from joint in ends.Distinct().GroupBy(e => e.Joint, e => e.Net)
            from net in joint.Skip(1)
            select new Element
            {
                Id = $"wire {joint.Key}.{joint.First()}-{net}",
                Device = "",
                A = joint.First(),
                B = net,
                Type = ElementType.Conductor,
            },
        ];
}
