namespace Coldpath.Wiring.Failures;

/// <summary>
/// Control wires come off a device, or touch earth. A net is taken as a star: each device hangs on it by a wire of its
/// own, and where there are only two devices one of the wires stands for both. Power wiring is left out: that a phase
/// is lost, or shorts to earth and operates its short-circuit device, is in the panel's behaviour already.
/// </summary>
internal sealed class WireFailures
{
    private readonly Netlist netlist;
    private readonly Func<string, bool> chosen;
    private readonly Dictionary<string, string> strips;
    private readonly Dictionary<(string Device, string Net), string> ends = [];
    private readonly List<string> names = [];
    private readonly List<Variable> variables = [];
    private readonly List<Element> wires = [];

    private WireFailures(Netlist netlist, Func<string, bool> chosen)
    {
        this.netlist = netlist;
        this.chosen = chosen;
        strips = Strips.Of(netlist);
        var power = PowerNets.Of(netlist);
        foreach (var net in netlist.Nets.Where(n => n != netlist.Earth && !power.Contains(n)))
            Add(net);
    }

    /// <param name="netlist">The panel.</param>
    /// <param name="chosen">The names of the failures that are wanted.</param>
    public static Netlist AddTo(Netlist netlist, Func<string, bool> chosen)
    {
        var failures = new WireFailures(netlist, chosen);
        var renamed = new NetlistRenaming(failures.ends).Of(netlist);
        return renamed with
        {
            Nets = [.. renamed.Nets, .. failures.ends.Values],
            Variables = [.. renamed.Variables, .. failures.variables],
            Elements = [.. renamed.Elements, .. failures.wires],
        };
    }

    /// <summary>By device and net the failure that takes the device's own wire off the net.</summary>
    public static IReadOnlyDictionary<(string Device, string Net), string> Ends(Netlist netlist)
    {
        var failures = new WireFailures(netlist, _ => true);
        return failures.ends.Keys.Zip(failures.names).ToDictionary();
    }

    private void Add(string net)
    {
        string[] devices =
        [
            .. netlist.Points.Where(p => p.Net == net).Select(p => p.Device).OfType<string>().Distinct(),
        ];
        if (devices.Length < 2)
            return;
        // Of two devices one; none where the wire goes on over a strip and was counted on its other side.
        foreach (
            var device in devices.Take(
                devices.Length > 2 ? devices.Length
                : strips[net] == net ? 1
                : 0
            )
        )
            ComesOff(device, net);
        if (strips[net] == net && !HasBond(net))
            Touches(net);
    }

    private void ComesOff(string device, string net)
    {
        var point = netlist.Points.First(p => p.Net == net && p.Device == device).Name;
        var (name, end) = ($"{point}.off", $"{point}'");
        if (!chosen(name))
            return;
        ends.Add((device, net), end);
        names.Add(name);
        variables.Add(FailureVariable.Of(name, device, FailureClass.Wiring, Expression.True));
        wires.Add(
            new()
            {
                Id = $"{point}.wire",
                Device = device,
                A = end,
                B = net,
                Type = ElementType.Conductor,
                Closed = Expression.Negate(FailureVariable.Happened(name)),
            }
        );
    }

    private void Touches(string net)
    {
        var point = netlist.Points.First(p => p.Net == net && p.Device is not null);
        var name = $"{net}.touches earth";
        if (!chosen(name))
            return;
        variables.Add(FailureVariable.Of(name, point.Device!, FailureClass.Wiring, Expression.True));
        wires.Add(
            new()
            {
                Id = $"{net}.earth fault",
                Device = point.Device!,
                A = net,
                B = netlist.Earth,
                Type = ElementType.Fault,
                Closed = FailureVariable.Happened(name),
            }
        );
    }

    private bool HasBond(string net) =>
        netlist.Elements.Any(e =>
            e.Type == ElementType.Conductor
            && ((e.A == net && e.B == netlist.Earth) || (e.B == net && e.A == netlist.Earth))
        );
}
