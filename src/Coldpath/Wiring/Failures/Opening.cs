namespace Coldpath.Wiring.Failures;

/// <summary>Which failures open an element, whatever else holds.</summary>
public static class Opening
{
    /// <summary>The variables that must not say "yes" for the guard to hold.</summary>
    public static IEnumerable<string> By(Expression guard) =>
        guard switch
        {
            Not { Term: VariableIs { Value: FailureVariable.Yes } failure } => [failure.Variable],
            All all => all.Terms.SelectMany(By),
            _ => [],
        };
}
