namespace Coldpath.Wiring.Failures;

/// <summary>
/// The parts of a panel that may stop conducting. Left out are coils, which burn open with their armature, what its
/// kind lets fail so by a name of its own, and what leads nowhere, since nothing can pass it anyway.
/// </summary>
internal static class OpenParts
{
    public static IReadOnlyList<OpenPart> Of(Netlist netlist)
    {
        var mentions = new NetMentions(netlist);
        var fed = netlist.Loads.SelectMany(l => l.Elements).ToHashSet();
        var measured = netlist.Points.Select(p => p.Net).ToHashSet();
        var failures = netlist
            .Variables.Where(v => v.Kind == VariableKind.Failure)
            .Select(v => v.Name)
            .ToHashSet();
        return
        [
            .. All(netlist)
                .Where(p =>
                    !IsCoil(netlist, p.Element)
                    && (
                        p.Element.Type != ElementType.Load
                        || fed.Contains(p.Element.Id)
                        || IsBetweenTerminals(p.Element, measured)
                    )
                    && !Fails(p.Element, failures)
                    && !mentions.IsLast(p.Element.A)
                    && !mentions.IsLast(p.Element.B)
                ),
        ];
    }

    /// <summary>Whatever is of a sort to open. Its name is the same whatever else may fail.</summary>
    private static IEnumerable<OpenPart> All(Netlist netlist) =>
        netlist
            .Elements.Where(e => OpenPart.Verb(e.Type) is not null && e.Device.Length > 0)
            .GroupBy(e => (e.Device, OpenPart.Verb(e.Type)!))
            .SelectMany(Named);

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

    /// <summary>Else it only stands for the way round through the inside of its device.</summary>
    private static bool IsBetweenTerminals(Element load, HashSet<string> measured) =>
        measured.Contains(load.A) && measured.Contains(load.B);

    private static bool IsCoil(Netlist netlist, Element element) =>
        element.Type == ElementType.Load
        && netlist.Variables.Any(v =>
            v is { Kind: VariableKind.Armature, Coil.Count: 2 }
            && v.Device == element.Device
            && v.Coil.Contains(element.A)
            && v.Coil.Contains(element.B)
        );

    /// <summary>Its kind has a failure that opens it.</summary>
    private static bool Fails(Element element, HashSet<string> failures) =>
        element.Type != ElementType.Contact && Opening.By(element.Closed).Any(failures.Contains);
}
