using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;
using Coldpath.Tests.Devices;
using Coldpath.Wiring;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>Parts to be drawn, made from a device's line with its terminals 10 mm apart.</summary>
internal static class SymbolParts
{
    public static PlacedDevice Device(string line, string rules, KindLibrary? library = null)
    {
        var blueprint = Declared.Device(line, rules == "NEC" ? Declared.Nec : Declared.Iec, library);
        return new()
        {
            Tag = "D1",
            Blueprint = blueprint,
            Span = new Span(new SourceText("test.panel", line), 0, line.Length),
            Terminals = TerminalsOf(blueprint),
        };
    }

    /// <summary>Null for what has no power side.</summary>
    public static PowerPart? Power(PlacedDevice device, string rules, bool oneLine, bool closed)
    {
        var blueprint = device.Blueprint;
        var power = Sides(device);
        var above = power.Where(t => IsLineSide(blueprint, t)).ToList();
        var below = power.Except(above).ToList();
        if (above.Count + below.Count == 0)
            return null;
        var ports = oneLine
            ? [.. Joined(above, true), .. Joined(below, false)]
            : Spread(above, true).Concat(Spread(below, false)).ToList();
        return new(device, rules, ports, [.. Poles(blueprint, ports, closed)], oneLine);
    }

    public static IEnumerable<ControlPart> Control(PlacedDevice device, string rules, bool operated)
    {
        var blueprint = device.Blueprint;
        foreach (var part in blueprint.Parts)
        foreach (var (left, right) in part.Left.Zip(part.Right))
        {
            var role = RoleOf(blueprint, left, right);
            var closed = !part.Name.StartsWith("NO", StringComparison.Ordinal);
            yield return new(device, rules, part.Name, role, [], closed, closed != operated)
            {
                Left = left,
                Right = left == right ? "" : right,
            };
        }
        foreach (var family in blueprint.Families)
        {
            var values =
                blueprint.Network.Variables.FirstOrDefault(v => v.Name == family.Positions)?.Values ?? [];
            var positions = values.Where(v => !v.Contains('>', StringComparison.Ordinal)).Take(2).ToList();
            var closed = family.Name.StartsWith("NC", StringComparison.Ordinal);
            var contact = family.Contact(2, positions, values);
            yield return new(
                device,
                rules,
                family.Name,
                ControlRole.Contact,
                positions,
                closed,
                closed != operated
            )
            {
                Left = contact.Element.A,
                Right = contact.Element.B,
            };
        }
    }

    private static IReadOnlyList<string> TerminalsOf(Blueprint blueprint) =>
        [
            .. blueprint
                .LineSide.Concat(blueprint.LoadSide)
                .Concat(blueprint.Network.Points.Select(p => p.Name))
                .Concat(blueprint.Network.Nets)
                .Where(t => !t.StartsWith('*') && t != blueprint.Network.Earth)
                .Distinct(),
        ];

    /// <summary>Said to be, or the first end of an element and never the second.</summary>
    private static bool IsLineSide(Blueprint blueprint, string terminal)
    {
        var elements = blueprint.Network.Elements.Where(e => e.Power).ToList();
        return blueprint.LineSide.Contains(terminal)
            || (
                elements.Any(e => e.A == terminal)
                && !elements.Any(e => e.B == terminal)
                && !blueprint.LoadSide.Contains(terminal)
            );
    }

    private static List<string> Sides(PlacedDevice device)
    {
        var blueprint = device.Blueprint;
        var power = blueprint.Network.Elements.Where(e => e.Power).SelectMany(e => new[] { e.A, e.B });
        return
        [
            .. blueprint
                .LineSide.Concat(blueprint.LoadSide)
                .Concat(power)
                .Distinct()
                .Where(device.Terminals.Contains),
        ];
    }

    private static IEnumerable<PowerPort> Spread(List<string> names, bool above) =>
        names.Select((name, i) => new PowerPort(name, above, i * 10, 1));

    private static IEnumerable<PowerPort> Joined(List<string> names, bool above) =>
        names.Count == 0 ? [] : [new PowerPort(string.Join(' ', names), above, 0, names.Count)];

    private static IEnumerable<Pole> Poles(Blueprint blueprint, List<PowerPort> ports, bool closed)
    {
        foreach (var (a, above) in ports.Index().Where(p => p.Item.Above))
        foreach (var (b, below) in ports.Index().Where(p => !p.Item.Above))
        foreach (var types in Ways(blueprint, above.Name.Split(' ')[0], below.Name.Split(' ')[0]))
            yield return new(a, b, types, closed);
    }

    /// <summary>Ways from terminal to terminal over nets inside the device.</summary>
    private static IEnumerable<List<ElementType>> Ways(Blueprint blueprint, string from, string to)
    {
        foreach (var element in blueprint.Network.Elements.Where(e => e.A == from || e.B == from))
        {
            var next = element.A == from ? element.B : element.A;
            if (next == to)
                yield return [element.Type];
            else if (next.StartsWith('*'))
                foreach (
                    var last in blueprint.Network.Elements.Where(e =>
                        (e.A, e.B) == (next, to) || (e.B, e.A) == (next, to)
                    )
                )
                    yield return [element.Type, last.Type];
        }
    }

    private static ControlRole RoleOf(Blueprint blueprint, string left, string right)
    {
        if (left == right)
            return ControlRole.Terminal;
        if (blueprint.Network.Variables.Any(v => v.Coil.Contains(left) && v.Coil.Contains(right)))
            return ControlRole.Coil;
        return blueprint.Network.Elements.FirstOrDefault(e => (e.A, e.B) == (left, right))?.Type switch
        {
            ElementType.Contact => ControlRole.Contact,
            ElementType.Load => ControlRole.Load,
            _ => ControlRole.Through,
        };
    }
}
