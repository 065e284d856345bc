namespace Coldpath.Wiring;

/// <summary>Questions about conditions as text.</summary>
public static class Guards
{
    /// <summary>The variables that a condition names, in order of first mention, repeated ones repeated.</summary>
    public static IEnumerable<string> Variables(Expression condition) =>
        condition switch
        {
            VariableIs v => [v.Variable],
            Not n => Variables(n.Term),
            All a => a.Terms.SelectMany(Variables),
            Any a => a.Terms.SelectMany(Variables),
            _ => [],
        };
}
