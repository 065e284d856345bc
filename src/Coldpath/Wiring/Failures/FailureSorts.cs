namespace Coldpath.Wiring.Failures;

/// <summary>Tells the sorts of a netlist's failures.</summary>
/// <param name="netlist">With the failures in it.</param>
public sealed class FailureSorts(Netlist netlist)
{
    private readonly ILookup<string, Element> changed = netlist
        .Elements.SelectMany(e =>
            Guards.Variables(e.Closed).Distinct().Select(name => (Name: name, Element: e))
        )
        .ToLookup(p => p.Name, p => p.Element);

    public FailureSort Of(Variable failure) =>
        failure.Class switch
        {
            FailureClass.Wiring or FailureClass.Coil => Touches(failure)
                ? FailureSort.Touching
                : FailureSort.Broken,
            _ when OnlyOpens(failure) => FailureSort.Broken,
            FailureClass.Semiconductor => FailureSort.Semiconductor,
            _ => FailureSort.Part,
        };

    /// <summary>All that it does is to open something.</summary>
    private bool OnlyOpens(Variable failure) =>
        changed[failure.Name].Any()
        && changed[failure.Name].All(e => Opening.By(e.Closed).Contains(failure.Name));

    private bool Touches(Variable failure) => changed[failure.Name].Any(e => e.Type == ElementType.Fault);
}
