namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// Moves of one variable, whose bits lie at neighbouring levels: above these the move changes nothing, so a set grows
/// branch by branch and keeps the branches that gain nothing.
/// </summary>
public sealed partial class DiagramTable
{
    /// <summary>The states, and those that the move leads to from the ones among them that are in the source.</summary>
    /// <param name="states">Where to start.</param>
    /// <param name="source">The states that the move starts from.</param>
    /// <param name="bits">The cube of the variable's levels.</param>
    /// <param name="code">The cube of the same levels that says which value the variable takes.</param>
    public Diagram WithImage(Diagram states, Diagram source, Diagram bits, Diagram code) =>
        new(WithImage(states.Edge, source.Edge, bits.Edge, code.Edge));

    /// <summary>The states, and those of the source from which the move leads to one of them.</summary>
    /// <inheritdoc cref="WithImage(Diagram, Diagram, Diagram, Diagram)"/>
    public Diagram WithPreimage(Diagram states, Diagram source, Diagram bits, Diagram code) =>
        new(WithPreimage(states.Edge, source.Edge, bits.Edge, code.Edge));

    private int WithImage(int states, int source, int bits, int code)
    {
        if (source == False || states <= False)
            return states;
        if (Known(states, source, Operation.Image | code, out var known))
            return known;
        var level = Math.Min(LevelOf(states), LevelOf(source));
        int result;
        if (level >= LevelOf(code))
            result = Or(states, And(AndExists(states, source, bits), code));
        else
        {
            var low = WithImage(Below(states, level, false), Below(source, level, false), bits, code);
            var high = WithImage(Below(states, level, true), Below(source, level, true), bits, code);
            result = Make(level, low, high);
        }
        return Remember(states, source, Operation.Image | code, result);
    }

    private int WithPreimage(int states, int source, int bits, int code)
    {
        if (source == False || states <= False)
            return states;
        if (Known(states, source, Operation.Preimage | code, out var known))
            return known;
        var level = Math.Min(LevelOf(states), LevelOf(source));
        int result;
        if (level >= LevelOf(code))
            result = Or(states, And(AndExists(states, code, bits), source));
        else
        {
            var low = WithPreimage(Below(states, level, false), Below(source, level, false), bits, code);
            var high = WithPreimage(Below(states, level, true), Below(source, level, true), bits, code);
            result = Make(level, low, high);
        }
        return Remember(states, source, Operation.Preimage | code, result);
    }
}
