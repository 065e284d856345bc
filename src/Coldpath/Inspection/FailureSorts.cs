using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What sort of thing a failure is, read off the wiring: a name or a kind would tell nothing.</summary>
public enum FailureSort
{
    /// <summary>A contact or an operating part that stays as it is or moves by itself.</summary>
    Part,
    Semiconductor,

    /// <summary>A wire comes off, or a coil or winding opens.</summary>
    Broken,

    /// <summary>A conductor touches earth or another one.</summary>
    Touching,
}

internal static class FailureSorts
{
    /// <summary>By the variable's name.</summary>
    public static Dictionary<string, FailureSort> Of(Netlist netlist)
    {
        var touching = netlist
            .Elements.Where(e => e.Type == ElementType.Fault)
            .SelectMany(e => Guards.Variables(e.Closed))
            .ToHashSet();
        return netlist
            .Variables.Where(v => v.Kind == VariableKind.Failure)
            .ToDictionary(v => v.Name, v => Of(v, touching.Contains(v.Name)));
    }

    private static FailureSort Of(Variable failure, bool touches) =>
        failure.Class switch
        {
            FailureClass.Semiconductor => FailureSort.Semiconductor,
            FailureClass.Wiring or FailureClass.Coil => touches ? FailureSort.Touching : FailureSort.Broken,
            _ => FailureSort.Part,
        };
}
