using Coldpath.Wiring;
using QuikGraph.Collections;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Which elements, by conducting, can only make more live, whatever else is the case. Earth's hold on a net comes
/// through solid elements that may be joined to earth; what a converter asks of two nets fails where they are joined.
/// Every other way in which live depends on an element is a way along it.
/// </summary>
internal sealed class Helping
{
    private readonly string earth;
    private readonly ForestDisjointSet<string> joined = new();
    private readonly ForestDisjointSet<string> bonded = new();
    private readonly HashSet<string> apart = [];

    /// <param name="netlist">The network.</param>
    /// <param name="canClose">The element conducts in some assignment.</param>
    public Helping(Netlist netlist, Func<Element, bool> canClose)
    {
        earth = netlist.Earth;
        foreach (var net in netlist.Nets)
        {
            joined.MakeSet(net);
            bonded.MakeSet(net);
        }
        foreach (var element in netlist.Elements.Where(e => IsSolid(e) && canClose(e)))
        {
            joined.Union(element.A, element.B);
            if (element.Type != ElementType.Fault)
                bonded.Union(element.A, element.B);
        }
        foreach (var nets in netlist.Converters.SelectMany(c => KeptApart(c.When)))
        foreach (var same in nets.Distinct().GroupBy(joined.FindSet).Where(g => g.Count() > 1))
            apart.Add(same.Key);
    }

    /// <summary>False where a converter asks what nothing is known of here: then nothing can be said to help.</summary>
    public static bool IsKnown(Netlist netlist) => netlist.Converters.All(c => IsKnown(c.When));

    /// <summary>More is live, or as much, when it conducts.</summary>
    public bool Helps(Element element) =>
        !IsSolid(element)
        || !apart.Contains(joined.FindSet(element.A))
            && (element.Type == ElementType.Fault || !bonded.AreInSameSet(element.A, earth));

    private static bool IsSolid(Element element) =>
        element.Type is not (ElementType.Load or ElementType.Series or ElementType.Diode);

    /// <summary>The nets of each question that must not be joined for it to be answered yes.</summary>
    private static IEnumerable<string[]> KeptApart(Expression when) =>
        when switch
        {
            All a => a.Terms.SelectMany(KeptApart),
            Any a => a.Terms.SelectMany(KeptApart),
            Energised e =>
            [
                [e.A, e.B],
            ],
            Fed f =>
            [
                [f.A, f.B, f.C],
            ],
            _ => [],
        };

    private static bool IsKnown(Expression when) =>
        when switch
        {
            All a => a.Terms.All(IsKnown),
            Any a => a.Terms.All(IsKnown),
            Energised e => e.Grade != Grade.Loose,
            Fed f => f.Grade != Grade.Loose,
            _ => IsGuard(when),
        };

    private static bool IsGuard(Expression when) =>
        when switch
        {
            Not n => IsGuard(n.Term),
            All a => a.Terms.All(IsGuard),
            Any a => a.Terms.All(IsGuard),
            _ => when is Constant or VariableIs,
        };
}
