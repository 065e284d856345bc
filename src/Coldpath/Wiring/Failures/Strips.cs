namespace Coldpath.Wiring.Failures;

/// <summary>Nets that are always one: joined by conductors that nothing opens, as over a terminal strip.</summary>
internal static class Strips
{
    /// <summary>For each net the one that stands for it: the first declared of those that it is always one with.</summary>
    public static Dictionary<string, string> Of(Netlist netlist)
    {
        var first = netlist.Nets.ToDictionary(net => net);
        var places = netlist.Nets.Index().ToDictionary(n => n.Item, n => n.Index);
        foreach (var element in netlist.Elements)
            if (element is { Type: ElementType.Conductor, Closed: Constant { Value: true } })
                Join(Root(element.A), Root(element.B));
        return netlist.Nets.ToDictionary(net => net, Root);

        string Root(string net)
        {
            while (first[net] != net)
                net = first[net];
            return net;
        }

        void Join(string one, string other)
        {
            var (early, late) = places[one] <= places[other] ? (one, other) : (other, one);
            first[late] = early;
        }
    }
}
