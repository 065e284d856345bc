namespace Coldpath.Wiring.Failures;

/// <summary>
/// Parts that no longer conduct: a contact that does not make, a fuse that has opened by itself, a heater that has
/// parted, a lamp burnt out, a winding or a semiconductor open.
/// </summary>
internal static class OpenFailures
{
    /// <param name="netlist">The panel with what was added to it before.</param>
    /// <param name="plain">The panel as it came: it tells what can open.</param>
    /// <param name="chosen">The names of the failures that are wanted.</param>
    public static Netlist AddTo(Netlist netlist, Netlist plain, Func<string, bool> chosen)
    {
        var parts = OpenParts.Of(plain).Where(p => chosen(p.Name)).ToDictionary(p => p.Element.Id);
        return parts.Values.Aggregate(
            netlist with
            {
                Variables =
                [
                    .. netlist.Variables,
                    .. parts.Values.Select(p =>
                        FailureVariable.Of(p.Name, p.Element.Device, p.Class, Expression.True)
                    ),
                ],
                Elements = [.. netlist.Elements.Select(e => Opened(e, parts))],
            },
            Parted
        );
    }

    private static Element Opened(Element element, Dictionary<string, OpenPart> parts) =>
        parts.TryGetValue(element.Id, out var part)
            ? element with
            {
                Closed = FailureVariable.Unless(part.Name, element.Closed),
            }
            : element;

    /// <summary>
    /// A load runs by what comes to its terminals, and so does what it moves. Where it is one part, it is fed behind a
    /// break of its own, so that neither does when that part is open.
    /// </summary>
    private static Netlist Parted(Netlist netlist, OpenPart part) =>
        netlist.Loads.FirstOrDefault(l => l.Elements.SequenceEqual([part.Element.Id])) is { } load
            ? Behind(netlist, part, load)
            : netlist;

    private static Netlist Behind(Netlist netlist, OpenPart part, Load load)
    {
        var (net, end) = (part.Element.A, $"{part.Name}'");
        var renaming = new NetlistRenaming(
            new Dictionary<(string, string), string> { [(part.Element.Device, net)] = end }
        );
        return netlist with
        {
            Nets = [.. netlist.Nets, end],
            Variables = [.. netlist.Variables.Select(renaming.Variable)],
            Elements =
            [
                .. netlist.Elements.Select(e => e.Id == part.Element.Id ? e with { A = end } : e),
                Break(part, end, net),
            ],
            Loads = [.. netlist.Loads.Select(l => l == load ? FedAt(l, net, end) : l)],
        };
    }

    private static Element Break(OpenPart part, string end, string net) =>
        new()
        {
            Id = $"{part.Name}.break",
            Device = part.Element.Device,
            A = end,
            B = net,
            Type = ElementType.Conductor,
            Closed = Expression.Negate(FailureVariable.Happened(part.Name)),
        };

    private static Load FedAt(Load load, string net, string end) =>
        load with
        {
            Modes =
            [
                .. load.Modes.Select(m => m with { Feed = [.. m.Feed.Select(n => n == net ? end : n)] }),
            ],
        };
}
