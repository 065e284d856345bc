using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Intents that make sense of a random panel.</summary>
internal sealed class RandomIntents(Netlist netlist, System.Random dice)
{
    /// <summary>One of each form, as far as the panel has what it needs.</summary>
    public IEnumerable<Intent> All()
    {
        yield return Never();
        var load = Pick(netlist.Loads).Name;
        yield return new()
        {
            Form = IntentForm.Dead,
            Of = load,
            When = Condition(),
        };
        yield return new()
        {
            Form = IntentForm.Can,
            Of = load,
            Via = Devices().Take(dice.Next(1, 3)).ToArray(),
        };
        if (Stop() is { } by)
            yield return new()
            {
                Form = IntentForm.Stops,
                Of = load,
                By = [by],
                AtOnce = dice.Next(2) == 0,
            };
    }

    private Intent Never() =>
        new()
        {
            Form = IntentForm.Never,
            When = dice.Next(2) == 0 ? Expression.AllOf(Condition(), Condition()) : Condition(),
            Settled = dice.Next(2) == 0,
        };

    private Expression Condition()
    {
        var variable = Pick(netlist.Variables);
        Expression condition = dice.Next(6) switch
        {
            0 => new Runs(Pick(netlist.Loads).Name, Pick(Turning.Any, Turning.Forward, Turning.Reverse)),
            1 => new Live(Pick(netlist.Nets)),
            2 => new Closed(Pick(netlist.Elements).Id),
            _ => new VariableIs(variable.Name, Pick(variable.Values)),
        };
        return dice.Next(3) == 0 ? Expression.Negate(condition) : condition;
    }

    /// <summary>Power devices in random order.</summary>
    private IEnumerable<string> Devices() =>
        netlist.Elements.Where(e => e.Power).Select(e => e.Device).Distinct().OrderBy(_ => dice.Next());

    /// <summary>A control and the value that counts as operated.</summary>
    private Operation? Stop()
    {
        var controls = netlist.Variables.Where(v => v.Moves.Any(m => m.By == Mover.Operator)).ToArray();
        if (controls.Length == 0)
            return null;
        var control = Pick(controls);
        var values = control.Values.Where(v => !v.Contains('>')).ToArray();
        return new(control.Name, Pick(values));
    }

    private T Pick<T>(params IReadOnlyList<T> choices) => choices[dice.Next(choices.Count)];
}
