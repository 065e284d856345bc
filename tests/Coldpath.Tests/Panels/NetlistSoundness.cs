using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;

namespace Coldpath.Tests.Panels;

/// <summary>What must hold of any netlist: every name in it is declared, once, and guards speak of variables only.</summary>
internal sealed class NetlistSoundness
{
    private readonly Netlist netlist;
    private readonly HashSet<string> nets;
    private readonly HashSet<string> elements;
    private readonly Dictionary<string, Variable> variables;

    private NetlistSoundness(Netlist netlist)
    {
        this.netlist = netlist;
        nets = [.. netlist.Nets];
        elements = [.. netlist.Elements.Select(e => e.Id)];
        variables = netlist.Variables.ToDictionary(v => v.Name);
    }

    public static void Check(Netlist netlist)
    {
        var soundness = new NetlistSoundness(netlist);
        soundness.CheckNames();
        soundness.CheckGuards();
        soundness.CheckMoves();
        soundness.CheckRoles();
    }

    private IEnumerable<Supply> Supplies => netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));

    private void CheckNames()
    {
        nets.Should().HaveSameCount(netlist.Nets).And.Contain(netlist.Earth);
        elements.Should().HaveSameCount(netlist.Elements);
        netlist.Devices.Select(d => d.Tag).Should().OnlyHaveUniqueItems();
        netlist.Points.Select(p => p.Name).Should().OnlyHaveUniqueItems();
        Supplies.Select(s => s.Name).Should().OnlyHaveUniqueItems();
        netlist.Loads.Select(l => l.Name).Should().OnlyHaveUniqueItems();
        netlist
            .Elements.SelectMany(e => new[] { e.A, e.B })
            .Concat(Supplies.SelectMany(s => s.Conductors).Select(c => c.Net))
            .Concat(netlist.Converters.SelectMany(c => c.Inputs.Concat(c.Windings.SelectMany(w => w))))
            .Concat(netlist.Couplings.SelectMany(c => c.Windings).SelectMany(w => w))
            .Concat(netlist.Loads.SelectMany(l => l.Terminals.Concat(l.Modes.SelectMany(m => m.Feed))))
            .Concat(netlist.Variables.SelectMany(v => v.Coil))
            .Concat(netlist.Points.Select(p => p.Net))
            .Should()
            .BeSubsetOf(nets);
        var tags = netlist.Devices.Select(d => d.Tag).Append("").ToHashSet();
        netlist
            .Elements.Select(e => e.Device)
            .Concat(netlist.Variables.Select(v => v.Device))
            .Should()
            .BeSubsetOf(tags);
    }

    private void CheckGuards()
    {
        var guards = netlist
            .Elements.SelectMany(e => new[] { e.Closed, e.Leaks })
            .Concat(Supplies.SelectMany(s => s.Conductors.Select(c => c.Present).Append(s.Present)))
            .Concat(netlist.Constraints.Select(c => c.Holds))
            .OfType<Expression>();
        foreach (var term in guards.SelectMany(Terms))
            (term is Constant || term is VariableIs v && IsSaid(v)).Should().BeTrue($"{term} is a guard");
    }

    private void CheckMoves()
    {
        foreach (var variable in netlist.Variables)
        {
            variable.Values.Should().OnlyHaveUniqueItems().And.Contain(variable.Rest);
            foreach (var move in variable.Moves)
                variable.Values.Should().Contain([move.From, move.To]);
        }
        var conditions = netlist
            .Variables.SelectMany(v => v.Moves)
            .SelectMany(m => new[] { m.When, m.May })
            .Concat(netlist.Converters.Select(c => c.When))
            .Concat(netlist.Intents.Select(i => i.When));
        foreach (var term in conditions.SelectMany(Terms))
            IsKnown(term).Should().BeTrue($"{term} speaks of what there is");
    }

    private void CheckRoles()
    {
        foreach (var operation in netlist.Powered.Concat(netlist.Intents.SelectMany(i => i.By)))
            IsSaid(new VariableIs(operation.Variable, operation.Value)).Should().BeTrue();
        foreach (var device in netlist.Devices)
        {
            device.Protects.SelectMany(p => p.Elements).Should().BeSubsetOf(elements);
            device.OpensOnShort.SelectMany(o => o.Elements).Should().BeSubsetOf(elements);
            (device.Isolates?.Elements ?? []).Should().BeSubsetOf(elements);
            device.Span.Should().HaveCount(4);
        }
        netlist.Loads.SelectMany(l => l.Elements).Should().BeSubsetOf(elements);
        netlist.Pairs.SelectMany(p => p.Devices).Should().BeSubsetOf(netlist.Devices.Select(d => d.Tag));
    }

    private bool IsSaid(VariableIs term) =>
        variables.TryGetValue(term.Variable, out var variable) && variable.Values.Contains(term.Value);

    private bool IsKnown(Expression term) =>
        term switch
        {
            Constant or Quiet => true,
            VariableIs v => IsSaid(v),
            Energised e => nets.Contains(e.A) && nets.Contains(e.B),
            Fed f => nets.IsSupersetOf([f.A, f.B, f.C]),
            SinglePhased s => nets.IsSupersetOf([s.A, s.B, s.C]),
            Joined j => nets.Contains(j.A) && nets.Contains(j.B),
            Live l => nets.Contains(l.Net),
            Carries c => elements.Contains(c.Element),
            Closed c => elements.Contains(c.Element),
            Runs r => netlist.Loads.Any(l => l.Name == r.Load),
            InShort s => Supplies.Any(x => x.Name == s.Supply),
            _ => false,
        };

    private static IEnumerable<Expression> Terms(Expression expression) =>
        expression switch
        {
            Not not => Terms(not.Term),
            All all => all.Terms.SelectMany(Terms),
            Any any => any.Terms.SelectMany(Terms),
            _ => [expression],
        };
}
