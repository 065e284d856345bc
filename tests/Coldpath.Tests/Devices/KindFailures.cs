using System.Text;
using Coldpath.Devices;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Tests.Devices;

/// <summary>
/// How the devices of a kind can fail, over all forms that the tests have of it: the kind's own failures, those that
/// every panel adds, and those of each contact that is used.
/// </summary>
internal static class KindFailures
{
    public static string Account()
    {
        var text = new StringBuilder();
        foreach (var name in KindLibrary.Standard.Names.Order(StringComparer.Ordinal))
        {
            text.Append(name).Append('\n');
            foreach (var line in Of(name))
                text.Append("  ").Append(line).Append('\n');
        }
        return text.ToString();
    }

    /// <summary>"contact        weld1  weld2  weld3"; none is said too.</summary>
    private static IEnumerable<string> Of(string kind)
    {
        var all = StandardKindsTests
            .Lines.Where(l =>
                l.StartsWith(kind + " ", StringComparison.Ordinal) && char.IsUpper(l[kind.Length + 1])
            )
            .SelectMany(l => Ways(Declared.Device(l)))
            .Distinct()
            .ToLookup(way => way.Class, way => way.Name);
        return all.Count == 0
            ? ["none"]
            : Enum.GetValues<FailureClass>()
                .Where(all.Contains)
                .Select(c => $"{c.ToString().ToLowerInvariant(), -14} {string.Join("  ", all[c])}");
    }

    private static IEnumerable<(FailureClass Class, string Name)> Ways(Blueprint device)
    {
        var network = Used(device);
        return PartFailures
            .AddTo(network, _ => true)
            .Variables.Where(v => v.Kind == VariableKind.Failure)
            .Select(v => (v.Class!.Value, v.Name))
            .Concat(Opening(network))
            .Concat(device.Families.SelectMany(OfContact));
    }

    /// <summary>The device with the failures that open its parts, each of which is taken to lead somewhere.</summary>
    private static IEnumerable<(FailureClass Class, string Name)> Opening(Netlist network) =>
        OpenParts.EvenLoose(network).Where(p => !IsOfFamily(p)).Select(p => (p.Class, p.Name[2..]));

    /// <summary>A contact of that number stands for its family, which is told by name.</summary>
    private const int Any = 77;

    private static bool IsOfFamily(OpenPart part) =>
        part.Element.Id.StartsWith($"D.{Any}", StringComparison.Ordinal);

    private static IEnumerable<(FailureClass Class, string Name)> OfContact(ContactFamily family)
    {
        if (family.Welds)
            yield return (FailureClass.Contact, $"weld({family.Name})");
        yield return (FailureClass.Contact, $"open({family.Name})");
    }

    /// <summary>Under a tag: what has none belongs to nobody.</summary>
    private static Netlist Used(Blueprint device) =>
        device.Network with
        {
            Points =
            [
                .. device.Network.Nets.Where(n => !n.StartsWith('*')).Select(n => new Point(n, n, "D", null)),
            ],
            Variables = [.. device.Network.Variables.Select(v => v with { Device = "D" })],
            Loads =
            [
                .. device.Network.Loads.Select(l =>
                    l with
                    {
                        Elements = [.. l.Elements.Select(e => $"D.{e}")],
                    }
                ),
            ],
            Elements =
            [
                .. device
                    .Network.Elements.Concat(device.Families.Select(f => f.Contact(Any, [], []).Element))
                    .Select(e => e with { Device = "D", Id = $"D.{e.Id}" }),
            ],
        };
}
