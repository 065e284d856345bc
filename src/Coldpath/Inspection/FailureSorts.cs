using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection;

/// <summary>What sort of thing a failure is, read off the wiring: a name or a kind would tell nothing.</summary>
public enum FailureSort
{
    /// <summary>A contact or an operating part that stays as it is or moves by itself.</summary>
    Part,
    Semiconductor,

    /// <summary>A wire comes off, a coil or winding opens, a contact does not make.</summary>
    Broken,

    /// <summary>A conductor touches earth or another one.</summary>
    Touching,
}

internal static class FailureSorts
{
    public static FailureSort Of(Netlist netlist, Variable failure) =>
        failure.Class switch
        {
            FailureClass.Wiring or FailureClass.Coil => Touches(netlist, failure)
                ? FailureSort.Touching
                : FailureSort.Broken,
            _ when OnlyOpens(netlist, failure) => FailureSort.Broken,
            FailureClass.Semiconductor => FailureSort.Semiconductor,
            _ => FailureSort.Part,
        };

    /// <summary>All that it does is to open something.</summary>
    private static bool OnlyOpens(Netlist netlist, Variable failure)
    {
        Element[] changed =
        [
            .. netlist.Elements.Where(e => Guards.Variables(e.Closed).Contains(failure.Name)),
        ];
        return changed.Length > 0 && changed.All(e => Opening.By(e.Closed).Contains(failure.Name));
    }

    private static bool Touches(Netlist netlist, Variable failure) =>
        netlist.Elements.Any(e =>
            e.Type == ElementType.Fault && Guards.Variables(e.Closed).Contains(failure.Name)
        );
}
