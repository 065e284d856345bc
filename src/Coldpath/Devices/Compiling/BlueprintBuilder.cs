using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>Puts a blueprint together from the lines of a kind that hold for the device.</summary>
internal sealed class BlueprintBuilder(KindContext context)
{
    private readonly VariableBuilder variables = new(context);
    private readonly ElementBuilder elements = new(context);
    private readonly PartBuilder parts = new(context);
    private readonly SupplyBuilder supplies = new(context);
    private readonly LoadBuilder loads = new(context);
    private readonly RoleBuilder roles = new(context);

    public Blueprint Build(Kind kind, IReadOnlyList<PlacedLine> lines)
    {
        new Declaring(context).DeclareAll(lines);
        foreach (var line in lines)
        {
            variables.Add(line);
            elements.Add(line);
            parts.Add(line);
            supplies.Add(line);
            loads.Add(line);
            roles.Add(line);
        }
        var (lineSide, loadSide, named) = (parts.LineSide, parts.LoadSide, parts.Parts);
        context.Nets.ReportDangling();
        return new Blueprint
        {
            Kind = kind,
            Ratings = [.. context.Ratings.InOrder.Where(r => !BurdenBands.IsBand(r.Name))],
            Network = Network(kind),
            OwnVariable = OwnVariable(),
            LineSide = lineSide,
            LoadSide = loadSide,
            Parts = named,
            Families = parts.Families,
            States = roles.States,
            Use = roles.Use,
            Links = roles.Links,
        };
    }

    private Netlist Network(Kind kind) =>
        new()
        {
            Panel = "",
            Earth = Nets.Earth,
            Nets = context.Nets.InOrder,
            Supplies = supplies.Supplies,
            Converters = supplies.Converters,
            Couplings = supplies.Couplings,
            Variables = Variables(),
            Powered = variables.Powered,
            Elements = elements.Elements,
            Devices = [roles.Device(kind.Name)],
            Loads = loads.Loads(elements.Elements),
            Constraints = roles.Constraints,
            Assumed = context.Assumed,
        };

    private IReadOnlyList<Variable> Variables()
    {
        var presences = supplies.Presences();
        return
        [
            .. variables.Variables.Select(v =>
                v.Kind == VariableKind.Process && presences.Contains(v.Name)
                    ? v with
                    {
                        Kind = VariableKind.Supply,
                    }
                    : v
            ),
        ];
    }

    /// <summary>Where each pole has the first variable for itself, none stands for the device.</summary>
    private string? OwnVariable()
    {
        var first = context.Variables.Values.FirstOrDefault(v => v.Kind != VariableKind.Failure);
        return first?.Pole is null or { IsOnly: true } ? first?.Local : null;
    }
}
