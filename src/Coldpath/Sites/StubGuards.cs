using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Devices elsewhere on the way of a foreign source: one that isolates it, one that clears a short.</summary>
/// <param name="variables">Takes theirs beside those of the sources, which keeps what moves together close together.</param>
internal sealed class StubGuards(List<Variable> variables)
{
    private readonly Dictionary<string, (NetlistDevice Device, List<Element> Poles)> devices = new(
        StringComparer.Ordinal
    );

    public List<string> Nets { get; } = [];
    public IEnumerable<Element> Elements => devices.Values.SelectMany(d => d.Poles);
    public IEnumerable<Operation> Powered =>
        devices
            .Values.Where(d => d.Device.Isolates is not null)
            .Select(d => new Operation(d.Device.Tag, "closed"));

    public IEnumerable<NetlistDevice> Devices =>
        devices.Values.Select(d =>
            d.Device with
            {
                Isolates = d.Device.Isolates is { } isolates
                    ? isolates with
                    {
                        Elements = [.. d.Poles.Select(e => e.Id)],
                    }
                    : null,
                OpensOnShort = d.Device.Isolates is null
                    ? [new ShortOpening(d.Device.Tag, "blown", [.. d.Poles.Select(e => e.Id)], null)]
                    : [],
            }
        );

    public bool Has(string tag) => devices.ContainsKey(tag);

    /// <summary>The net behind a device that opens on a short.</summary>
    public string Clearing(string source, string net)
    {
        var tag = $"protection of {source}";
        if (!devices.ContainsKey(tag))
        {
            devices.Add(
                tag,
                (
                    new NetlistDevice
                    {
                        Tag = tag,
                        Kind = "other panel",
                        Elsewhere = true,
                    },
                    []
                )
            );
            variables.Add(Opening(tag, VariableKind.Trip, "whole", "blown"));
        }
        return Pole(tag, net, new VariableIs(tag, "whole"), ElementType.Thermal);
    }

    /// <summary>The net behind an isolator, under the name that it has in the site.</summary>
    public string Isolating(NetlistDevice isolator, string net)
    {
        if (!devices.ContainsKey(isolator.Tag))
        {
            var isolates = isolator.Isolates! with { Variable = isolator.Tag, Elements = [] };
            var device = new NetlistDevice
            {
                Tag = isolator.Tag,
                Kind = isolator.Kind,
                Place = isolator.Place,
                Isolates = isolates,
                Elsewhere = true,
            };
            devices.Add(isolator.Tag, (device, []));
            variables.Add(Opening(isolator.Tag, VariableKind.Position, "open", "closed"));
        }
        return Pole(isolator.Tag, net, new VariableIs(isolator.Tag, "closed"), ElementType.Contact);
    }

    private string Pole(string tag, string net, Expression closed, ElementType type)
    {
        var behind = $"{net} behind {tag}";
        var poles = devices[tag].Poles;
        if (poles.Exists(p => p.B == behind))
            return behind;
        poles.Add(
            new Element
            {
                Id = $"{tag}.{net}",
                Device = tag,
                Pole = poles.Count + 1,
                A = net,
                B = behind,
                Type = type,
                Closed = closed,
            }
        );
        Nets.Add(behind);
        return behind;
    }

    /// <summary>An operator moves it both ways; a short opens it by what its device says.</summary>
    private static Variable Opening(string name, VariableKind kind, string rest, string other)
    {
        var back = new Move(other, rest, Mover.Operator, Expression.True, Expression.False);
        var there = new Move(rest, other, Mover.Operator, Expression.True, Expression.False);
        return new Variable
        {
            Name = name,
            Device = name,
            Kind = kind,
            Values = [rest, other],
            Rest = rest,
            Moves = kind == VariableKind.Position ? [there, back] : [back],
        };
    }
}
