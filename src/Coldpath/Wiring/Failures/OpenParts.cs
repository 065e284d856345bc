namespace Coldpath.Wiring.Failures;

/// <summary>
/// The parts of a panel that may stop conducting. Left out are coils, which burn open with their armature; what its kind
/// lets fail so by a name of its own; what leads nowhere, since nothing can pass it anyway; and a load that does nothing
/// but take current (an input, a primary): open, it only ends a loose way, and what rests on that may end at any time.
/// </summary>
public sealed class OpenParts
{
    private readonly Netlist netlist;
    private readonly HashSet<string> failures;
    private readonly HashSet<string> fed;

    private OpenParts(Netlist netlist)
    {
        this.netlist = netlist;
        failures = [.. netlist.Variables.Where(v => v.Kind == VariableKind.Failure).Select(v => v.Name)];
        fed = [.. netlist.Loads.SelectMany(l => l.Elements)];
    }

    public static IReadOnlyList<OpenPart> Of(Netlist netlist)
    {
        var mentions = new NetMentions(netlist);
        return
        [
            .. EvenLoose(netlist).Where(p => !mentions.IsLast(p.Element.A) && !mentions.IsLast(p.Element.B)),
        ];
    }

    /// <summary>Those too that lead nowhere.</summary>
    public static IEnumerable<OpenPart> EvenLoose(Netlist netlist) =>
        Conducting(netlist).Where(new OpenParts(netlist).MayOpen);

    private bool MayOpen(OpenPart part) =>
        part.Element.Type switch
        {
            ElementType.Contact => true,
            ElementType.Load => fed.Contains(part.Element.Id)
                && !IsCoil(part.Element)
                && !IsItsKinds(part.Element),
            _ => !IsItsKinds(part.Element),
        };

    /// <summary>Whatever is of a sort to open. Its name is the same whatever else may fail.</summary>
    private static IEnumerable<OpenPart> Conducting(Netlist netlist)
    {
        var elsewhere = netlist.DevicesElsewhere();
        return netlist
            .Elements.Where(e => OpenPart.Verb(e.Type) is not null && e.Device.Length > 0)
            .Where(e => !elsewhere.Contains(e.Device))
            .GroupBy(e => (e.Device, OpenPart.Verb(e.Type)!))
            .SelectMany(Named);
    }

    private static IEnumerable<OpenPart> Named(IGrouping<(string Device, string Verb), Element> parts)
    {
        var alone = parts.Count() == 1 && parts.First().Type != ElementType.Contact;
        foreach (var same in parts.GroupBy(e => alone ? "" : OpenPart.Marking(e)))
        foreach (var (place, part) in same.Index())
        {
            // Parts side by side between the same terminals are told apart by their number.
            var number = place == 0 ? "" : $"#{place + 1}";
            yield return new(part, $"{parts.Key.Device}.{parts.Key.Verb}{same.Key}{number}");
        }
    }

    private bool IsCoil(Element load) =>
        netlist.Variables.Any(v =>
            v is { Kind: VariableKind.Armature, Coil.Count: 2 }
            && v.Device == load.Device
            && v.Coil.Contains(load.A)
            && v.Coil.Contains(load.B)
        );

    /// <summary>Its kind has a failure that opens it.</summary>
    private bool IsItsKinds(Element element) => Opening.By(element.Closed).Any(failures.Contains);
}
