using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>A link between two nets that some state may close.</summary>
/// <param name="OneWay">It leads from <paramref name="A"/> to <paramref name="B"/> only.</param>
/// <param name="Owner">The converter whose windings it couples; empty for any other link.</param>
/// <param name="Device">The device whose element it is; empty for couplings.</param>
/// <param name="Asks">What it asks of single variables; null for nothing.</param>
internal sealed record Link(
    string A,
    string B,
    Grade Grade,
    bool OneWay = false,
    string Owner = "",
    string Device = "",
    IReadOnlyList<Need>? Asks = null
)
{
    /// <summary>It goes with this converter or this device; empty for none.</summary>
    public bool IsOut(string converter, string device) =>
        (converter.Length > 0 && Owner == converter) || (device.Length > 0 && Device == device);
}

/// <summary>The links of a netlist, whatever its state: what may conduct, and how well.</summary>
internal static class Links
{
    public static IEnumerable<Link> Of(Netlist netlist) =>
        [.. Elements(netlist), .. Converters(netlist), .. netlist.Couplings.SelectMany(Coupled)];

    private static IEnumerable<Link> Elements(Netlist netlist)
    {
        var needs = new Needs(netlist);
        return from element in netlist.Elements
            where element.Closed is not Constant { Value: false }
            let asks = element.Type == ElementType.Semiconductor ? [] : needs.Of(element.Closed)
            select new Link(element.A, element.B, GradeOf(element.Type), Device: element.Device, Asks: asks);
    }

    private static Grade GradeOf(ElementType type) =>
        type switch
        {
            ElementType.Load or ElementType.Diode => Grade.Loose,
            ElementType.Series => Grade.Load,
            _ => Grade.Solid,
        };

    private static IEnumerable<Link> Converters(Netlist netlist) =>
        from converter in netlist.Converters
        from link in Star([.. converter.Windings.SelectMany(w => w)])
        select link with
        {
            Owner = converter.Output.Name,
        };

    private static IEnumerable<Link> Coupled(Coupling coupling) =>
        !coupling.FirstDrives
            ? Star([.. coupling.Windings.SelectMany(w => w)])
            :
            [
                .. Star(coupling.Windings[0]),
                .. coupling
                    .Windings.Skip(1)
                    .SelectMany(w => w)
                    .Select(n => new Link(coupling.Windings[0][0], n, Grade.Loose, OneWay: true)),
            ];

    private static IEnumerable<Link> Star(IReadOnlyList<string> nets) =>
        nets.Skip(1).Select(n => new Link(nets[0], n, Grade.Loose));
}
