using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;

namespace Coldpath.Tests.Devices;

/// <summary>What must hold of any blueprint: every name in it is declared, and guards speak of variables only.</summary>
internal static class Soundness
{
    public static void Check(Blueprint blueprint)
    {
        var network = blueprint.Network;
        var nets = network.Nets.ToHashSet();
        var variables = network.Variables.ToDictionary(v => v.Name);
        var elements = network.Elements.Select(e => e.Id).ToList();
        elements.Should().OnlyHaveUniqueItems();
        nets.Should().HaveSameCount(network.Nets);

        network.Elements.SelectMany(e => new[] { e.A, e.B }).Should().BeSubsetOf(nets);
        network.Elements.Should().NotContain(e => e.A == e.B);
        foreach (
            var guard in network.Elements.SelectMany(e => new[] { e.Closed, e.Leaks }).OfType<Expression>()
        )
            CheckGuard(guard, variables);
        foreach (var variable in network.Variables)
            CheckVariable(variable, nets, variables, elements);
        foreach (var supply in network.Supplies.Concat(network.Converters.Select(c => c.Output)))
        {
            supply.Conductors.Should().NotBeEmpty();
            supply.Conductors.Select(c => c.Net).Should().BeSubsetOf(nets);
            CheckGuard(supply.Present, variables);
        }
        foreach (var converter in network.Converters)
            converter.Inputs.Concat(converter.Windings.SelectMany(w => w)).Should().BeSubsetOf(nets);
        network.Couplings.SelectMany(c => c.Windings).SelectMany(w => w).Should().BeSubsetOf(nets);
        foreach (var load in network.Loads)
        {
            load.Elements.Should().NotBeEmpty().And.BeSubsetOf(elements);
            load.Terminals.Should().NotBeEmpty().And.BeSubsetOf(nets);
            load.Modes.Should().NotBeEmpty();
            load.Modes.SelectMany(m => m.Feed).Should().BeSubsetOf(nets);
        }
        blueprint.LineSide.Concat(blueprint.LoadSide).Where(t => t != "*").Should().BeSubsetOf(nets);
        foreach (var part in blueprint.Parts)
        {
            part.Left.Should().NotBeEmpty().And.HaveSameCount(part.Right);
            part.Left.Concat(part.Right).Should().BeSubsetOf(nets).And.NotContain(n => n.StartsWith('*'));
        }
        foreach (var family in blueprint.Families)
            CheckGuard(family.Closed, variables);
        if (blueprint.OwnVariable is { } own)
            variables.Should().ContainKey(own);
        foreach (var operation in network.Powered)
            variables[operation.Variable].Values.Should().Contain(operation.Value);
        foreach (var device in network.Devices)
        {
            device.Protects.SelectMany(p => p.Elements).Where(e => e[0] != '@').Should().BeSubsetOf(elements);
            device.OpensOnShort.SelectMany(o => o.Elements).Should().BeSubsetOf(elements);
            (device.Isolates?.Elements ?? []).Should().BeSubsetOf(elements);
        }
    }

    private static void CheckVariable(
        Variable variable,
        HashSet<string> nets,
        Dictionary<string, Variable> variables,
        List<string> elements
    )
    {
        variable.Values.Should().OnlyHaveUniqueItems().And.Contain(variable.Rest);
        variable.Coil.Should().BeSubsetOf(nets);
        variable.Moves.Should().NotBeEmpty();
        foreach (var move in variable.Moves)
        {
            variable.Values.Should().Contain([move.From, move.To]);
            CheckTerms(move.When, nets, variables, elements);
            CheckTerms(move.May, nets, variables, elements);
        }
    }

    private static void CheckGuard(Expression guard, Dictionary<string, Variable> variables)
    {
        foreach (var term in Terms(guard))
            term.Should()
                .Match<Expression>(t => t is Constant || t is VariableIs && Says((VariableIs)t, variables));
    }

    private static void CheckTerms(
        Expression expression,
        HashSet<string> nets,
        Dictionary<string, Variable> variables,
        List<string> elements
    )
    {
        foreach (var term in Terms(expression))
            (
                term switch
                {
                    Constant => true,
                    VariableIs v => Says(v, variables),
                    Energised e => nets.Contains(e.A)
                        && nets.Contains(e.B)
                        && e.Low >= 0
                        && !(e.High <= e.Low),
                    Fed f => nets.IsSupersetOf([f.A, f.B, f.C]),
                    Joined j => nets.Contains(j.A) && nets.Contains(j.B),
                    Carries c => elements.Contains(c.Element),
                    Closed c => elements.Contains(c.Element),
                    CarriesIn => true,
                    _ => false,
                }
            )
                .Should()
                .BeTrue($"{term} is sound");
    }

    private static bool Says(VariableIs term, Dictionary<string, Variable> variables) =>
        variables.TryGetValue(term.Variable, out var variable) && variable.Values.Contains(term.Value);

    private static IEnumerable<Expression> Terms(Expression expression) =>
        expression switch
        {
            Not not => Terms(not.Term),
            All all => all.Terms.SelectMany(Terms),
            Any any => any.Terms.SelectMany(Terms),
            _ => [expression],
        };
}
