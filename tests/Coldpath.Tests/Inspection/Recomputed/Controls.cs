using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>What the control circuit lets happen: running with all stops operated, coils, chatter, races.</summary>
internal static class Controls
{
    /// <summary>Findings that one state shows: a sample of the states finds some of them.</summary>
    public static IEnumerable<string> Found(Trade trade, Survey survey)
    {
        var claims = trade
            .Motors.Select(m => ($"runs-with-stops-pressed {m.Name}", RunsWhenStopped(trade, m)))
            .Concat(trade.Armatures.Select(a => ($"coil-blocked {a.Device}", Blocked(a))))
            .Append(("chatter", Part.All(Part.Is("chatter"), Part.Is("calm"))))
            .Concat(Races(trade).Select(r => ("race-changes-running", r)))
            .ToArray();
        var happens = survey.Happens([.. claims.Select(c => c.Item2)]);
        return claims.Select(c => c.Item1).Zip(happens).Where(f => f.Second).Select(f => f.First).Distinct();
    }

    /// <summary>Armatures that come in at no time, whose coil is wired on both sides.</summary>
    public static IEnumerable<string> NeverPulls(Trade trade, Survey survey)
    {
        var armatures = trade.Armatures.ToArray();
        var pulls = survey.Happens([.. armatures.Select(a => Part.Holds(Part.Var(a.Name, "in")))]);
        return armatures
            .Zip(pulls)
            .Where(a => !a.Second && !a.First.Coil.Any(net => IsOpen(trade.Netlist, net)))
            .Select(a => $"coil-never-pulls {a.First.Device}");
    }

    /// <summary>Armatures that, powered, are now out and now in, and from in never come out while power stays.</summary>
    public static IEnumerable<string> NeverDrops(Trade trade, Survey survey)
    {
        var powered = Part.All(
            trade
                .Netlist.Powered.Select(o => Part.Var(o.Variable, o.Value))
                .Append(trade.Supplied)
                .Select(e => Part.Holds(e))
                .Append(Part.Settled)
        );
        foreach (var armature in trade.Armatures)
        {
            var (isIn, isOut) = (
                Part.Holds(Part.Var(armature.Name, "in")),
                Part.Holds(Part.Var(armature.Name, "out"))
            );
            var both = survey.Happens([Part.All(powered, isIn), Part.All(powered, isOut)]);
            if (!both.Contains(false) && !survey.Leads(Part.All(powered, isIn), CutsPower(trade), isOut))
                yield return $"coil-never-drops {armature.Device}";
        }
    }

    private static object RunsWhenStopped(Trade trade, Load motor) =>
        Part.All(Part.Quiet, Part.Holds(Part.Runs(motor.Name)), Part.Holds(trade.StopsOperated));

    private static object Blocked(Variable armature) =>
        Part.All(Part.Settled, new { blocked = armature.Name });

    /// <summary>At most one start held, every supply there, nothing blown or tripped by a short.</summary>
    private static IEnumerable<object> Races(Trade trade)
    {
        var held = trade
            .Netlist.Variables.Where(v => v.Momentary)
            .Where(v => trade.Netlist.Devices.Single(d => d.Tag == v.Device).Use != ControlUse.Stop)
            .Select(v => Part.Not(Part.AtRest(v)))
            .ToArray();
        var two = from a in held.Index() from b in held.Skip(a.Index + 1) select Part.All(a.Item, b);
        var opened = trade
            .Netlist.Devices.SelectMany(d => d.OpensOnShort)
            .Select(o => Part.Var(o.Variable, o.To));
        var usual = Part.Holds(Part.All(trade.Supplied, Part.Not(Part.Any(two)), Part.Not(Part.Any(opened))));
        return from motor in trade.Motors
            from turns in new[] { "any", "forward", "reverse" }
            select Part.All(usual, Part.Is("calm"), new { race = Part.Runs(motor.Name, turns) });
    }

    private static IEnumerable<string> CutsPower(Trade trade)
    {
        var netlist = trade.Netlist;
        var breakers = netlist.Devices.Where(d => d.OpensOnShort.Count > 0).Select(d => d.Tag).ToHashSet();
        return trade
            .Presences.Select(v => v.Name)
            .Concat(netlist.Devices.Select(d => d.Isolates?.Variable).OfType<string>())
            .Concat(netlist.Variables.Select(v => $"{v.Name} short"))
            .Concat(
                netlist.Variables.Where(v => breakers.Contains(v.Device)).Select(v => $"{v.Name} operator")
            );
    }

    private static bool IsOpen(Netlist netlist, string net) =>
        net != netlist.Earth
        && netlist.Points.Count(p => p.Net == net && p.Device is not null) == 1
        && !netlist.Elements.Any(e => e.Type == ElementType.Conductor && (e.A == net || e.B == net))
        && !netlist.Supplies.Any(s => s.Conductors.Any(c => c.Net == net));
}
