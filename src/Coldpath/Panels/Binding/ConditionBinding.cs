using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Flattening;
using Coldpath.Wiring;

namespace Coldpath.Panels.Binding;

/// <summary>Turns conditions of intents into expressions over the netlist.</summary>
internal sealed class ConditionBinding(
    RefReader reader,
    Points points,
    Naming naming,
    BindingFindings findings
)
{
    /// <summary>Null when a part of it could not be understood, which has been said.</summary>
    public Expression? Bind(ConditionSyntax condition) =>
        condition switch
        {
            AndSyntax and => Every(and.Terms) is { } terms ? Expression.AllOf(terms) : null,
            OrSyntax or => Every(or.Terms) is { } terms ? Expression.AnyOf(terms) : null,
            NotSyntax not => Bind(not.Term) is { } term ? Expression.Negate(term) : null,
            StateSyntax state => State(state),
            _ => null,
        };

    private List<Expression>? Every(IReadOnlyList<ConditionSyntax> terms)
    {
        var bound = terms.Select(Bind).OfType<Expression>().ToList();
        return bound.Count == terms.Count ? bound : null;
    }

    private Expression? State(StateSyntax state)
    {
        var reading = reader.Read(state.Subject);
        if (reading is Unreadable)
            return null;
        if (reading is DeviceReading { Syntax.Terminals: null, Words: "" } device)
            return OfKind(device, state.State) ?? OfAnyDevice(device, state.State) ?? Unknown(state, device);
        return points.Of(reading) is not { } nets
            ? null
            : LiveOrDead(state.State, Expression.AnyOf(nets.Select(n => new Live(n))))
                ?? UnknownOfPoint(state);
    }

    private Expression? OfKind(DeviceReading device, string state)
    {
        var own = device.Device.Blueprint!.States.FirstOrDefault(s => s.Key == state);
        return own.Key is null ? null : naming[device.Tag].Of(own.Value);
    }

    private Expression? OfAnyDevice(DeviceReading device, string state)
    {
        var network = device.Device.Blueprint!.Network;
        return LiveOrDead(state, points.AnyLive(device.Tag))
            ?? AtPosition(device.Tag, network, state)
            ?? OfLoads(device.Tag, network, state)
            ?? OfSupplies(device.Tag, network, state);
    }

    /// <summary>A device without terminals is neither.</summary>
    private static Expression? LiveOrDead(string state, Expression anyLive) =>
        state switch
        {
            _ when anyLive is Constant => null,
            "live" => anyLive,
            "dead" => Expression.Negate(anyLive),
            _ => null,
        };

    private VariableIs? AtPosition(string tag, Netlist network, string state)
    {
        const string At = "at ";
        if (!state.StartsWith(At, StringComparison.Ordinal))
            return null;
        var position = state[At.Length..];
        var variable = network.Variables.FirstOrDefault(v =>
            v.Kind == VariableKind.Position && v.Values.Contains(position)
        );
        return variable is null ? null : new VariableIs(naming[tag].Variable(variable.Name), position);
    }

    private Expression? OfLoads(string tag, Netlist network, string state)
    {
        Turning? turns = state switch
        {
            "runs" => Turning.Any,
            "runs forward" => Turning.Forward,
            "runs reverse" => Turning.Reverse,
            _ => null,
        };
        return turns is null || network.Loads.Count == 0
            ? null
            : Expression.AnyOf(network.Loads.Select(l => new Runs(naming[tag].Load(l.Name), turns.Value)));
    }

    /// <summary>A supply is present when any conductor of it is, so "not present" is all of them gone.</summary>
    private Expression? OfSupplies(string tag, Netlist network, string state)
    {
        var names = naming[tag];
        var converted = network.Converters.Select(c => (c.Output, c.When));
        var supplies = network.Supplies.Select(s => (s, Expression.True)).Concat(converted).ToList();
        return supplies.Count == 0
            ? null
            : state switch
            {
                "present" => names.Of(Expression.AnyOf(supplies.Select(s => Present(s.Item1, s.Item2)))),
                "shorted" => Expression.AnyOf(supplies.Select(s => new InShort(names.Supply(s.Item1.Name)))),
                _ => null,
            };
    }

    private static Expression Present(Supply supply, Expression when) =>
        Expression.AllOf(when, supply.Present, Expression.AnyOf(supply.Conductors.Select(c => c.Present)));

    private Expression? Unknown(StateSyntax state, DeviceReading device)
    {
        var states = StatesOf(device).ToList();
        var span = state.Predicate[0].Span.Through(state.Predicate[^1].Span);
        var message = $"{device.Tag} has no state \"{state.State}\"; it has {string.Join(", ", states)}";
        var remedy = findings.DidYouMean(state.State, states);
        findings.Add(Complaint.UnknownState.At(span, message, device.Tag, remedy));
        return null;
    }

    private static IEnumerable<string> StatesOf(DeviceReading device)
    {
        var network = device.Device.Blueprint!.Network;
        var positions = network
            .Variables.Where(v => v.Kind == VariableKind.Position)
            .Take(device.Device.Blueprint.Families.Any(f => f.Positions is not null) ? 1 : 0)
            .SelectMany(v => v.Values.Where(p => !p.Contains('>')));
        string[] ofLoads = network.Loads.Count > 0 ? ["runs", "runs forward", "runs reverse"] : [];
        string[] ofSupplies =
            network.Supplies.Count + network.Converters.Count > 0 ? ["present", "shorted"] : [];
        return device
            .Device.Blueprint.States.Select(s => s.Key)
            .Concat(positions.Select(p => "at " + p))
            .Concat(ofLoads)
            .Concat(ofSupplies)
            .Concat(["live", "dead"])
            .Distinct();
    }

    private Expression? UnknownOfPoint(StateSyntax state)
    {
        var span = state.Predicate[0].Span.Through(state.Predicate[^1].Span);
        var message = $"a terminal or node is live or dead, not \"{state.State}\"";
        findings.Add(Complaint.UnknownState.At(span, message));
        return null;
    }
}
