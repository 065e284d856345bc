using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Flattening;
using Coldpath.Wiring;

namespace Coldpath.Panels.Binding;

/// <summary>Binds the lines that say what the panel is meant to do.</summary>
internal sealed class IntentBinding(
    RefReader reader,
    Points points,
    ConditionBinding conditions,
    Naming naming,
    BindingFindings findings
)
{
    /// <summary>Null when it could not be understood, which has been said.</summary>
    public Intent? Bind(IntentSyntax syntax) =>
        syntax switch
        {
            NeverSyntax never => Never(never),
            DeadSyntax dead => Dead(dead),
            StopsSyntax stops => Stops(stops),
            CanSyntax can => Can(can),
            _ => null,
        };

    private Intent? Never(NeverSyntax never) =>
        conditions.Bind(never.What) is not { } when
            ? null
            : Form(never, IntentForm.Never) with
            {
                When = never.When == StatesMeant.Quiet ? WhenQuiet(when) : when,
                Settled = never.When != StatesMeant.Any,
            };

    private static Expression WhenQuiet(Expression when) =>
        when is All all
            ? Expression.AllOf([.. all.Terms, new Quiet()])
            : Expression.AllOf([when, new Quiet()]);

    private Intent? Dead(DeadSyntax dead)
    {
        var target = Target(dead.What);
        var when = conditions.Bind(dead.When);
        return target is null || when is null
            ? null
            : Form(dead, IntentForm.Dead) with
            {
                Of = target,
                When = when,
            };
    }

    private Intent? Stops(StopsSyntax stops)
    {
        var load = Load(stops.What);
        var by = Device(stops.By) is { } device ? Operated(device) : null;
        return load is null || by is null
            ? null
            : Form(stops, IntentForm.Stops) with
            {
                Of = load,
                By = by,
                AtOnce = stops.AtOnce,
            };
    }

    private Intent? Can(CanSyntax can)
    {
        var load = Load(can.What);
        var via = can.Via.Select(Device).Select(WithPower).ToList();
        return load is null || via.Contains(null)
            ? null
            : Form(can, IntentForm.Can) with
            {
                Of = load,
                Via = [.. via.OfType<string>()],
            };
    }

    private static Intent Form(IntentSyntax syntax, IntentForm form) =>
        new()
        {
            Form = form,
            Failures = syntax.Failures ?? 0,
            Span = Places.Of(syntax.Span),
        };

    /// <summary>A device's tag, or a terminal or node as points are written.</summary>
    private string? Target(RefSyntax what)
    {
        var reading = reader.Read(what);
        if (reading is DeviceReading { Syntax.Terminals: null, Words: "" } device)
            return HasTerminals(device) ? device.Tag : null;
        if (points.PinsOf(reading) is not { } pins)
            return null;
        if (pins is [var pin])
            return pin.ToString();
        return Unfit<string>(what, "one terminal or device is meant here", null);
    }

    private bool HasTerminals(DeviceReading device) =>
        points.OfDevice(device.Tag).Count > 0
        || Unfit<object>(device.Syntax, $"{device.Tag} has no terminals", device.Tag) is not null;

    private string? Load(RefSyntax what)
    {
        if (Device(what) is not { } device)
            return null;
        return device.Device.Blueprint!.Network.Loads is [var load, ..]
            ? naming[device.Tag].Load(load.Name)
            : Unfit<string>(what, $"{device.Tag} is nothing that runs", device.Tag);
    }

    private string? WithPower(DeviceReading? device)
    {
        if (device is null)
            return null;
        return device.Device.Blueprint!.Network.Elements.Any(e => e.Power)
            ? device.Tag
            : Unfit<string>(
                device.Syntax,
                $"{device.Tag} has no power poles that a load could run through",
                device.Tag
            );
    }

    private DeviceReading? Device(RefSyntax reference)
    {
        var reading = reader.Read(reference);
        if (reading is DeviceReading { Syntax.Terminals: null, Words: "" } device)
            return device;
        if (reading is DeviceReading part)
            return Unfit<DeviceReading>(reference, $"{part.Tag} as a whole is meant here", part.Tag);
        return reading is NodeReading node
            ? Unfit<DeviceReading>(reference, $"{node.Pin} is a node, and a device is meant here", null)
            : null;
    }

    private List<Operation>? Operated(DeviceReading device)
    {
        var network = device.Device.Blueprint!.Network;
        foreach (var variable in network.Variables.Where(v => v.Kind == VariableKind.Position))
        {
            var values = Operations.OperatedValues(variable, device.Device.Blueprint.Use).ToList();
            if (values.Count > 0)
                return [.. values.Select(v => new Operation(naming[device.Tag].Variable(variable.Name), v))];
        }
        var message = $"{device.Tag} is no stop, and has no OFF or open position that could stop anything";
        return Unfit<List<Operation>>(device.Syntax, message, device.Tag);
    }

    private T? Unfit<T>(RefSyntax at, string message, string? device)
        where T : class
    {
        findings.Add(Complaint.UnfitIntent.At(at.Span, message, device));
        return null;
    }
}
