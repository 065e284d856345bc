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
    public static FailureSort Of(Netlist netlist, Variable failure) =>
        failure.Class switch
        {
            FailureClass.Semiconductor => FailureSort.Semiconductor,
            FailureClass.Wiring or FailureClass.Coil => Touches(netlist, failure)
                ? FailureSort.Touching
                : FailureSort.Broken,
            _ => FailureSort.Part,
        };

    private static bool Touches(Netlist netlist, Variable failure) =>
        netlist.Elements.Any(e =>
            e.Type == ElementType.Fault && Guards.Variables(e.Closed).Contains(failure.Name)
        );
}
