using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

public enum Disclosure
{
    /// <summary>It cannot happen: its occasion never comes.</summary>
    Impossible,

    /// <summary>No single operation is answered as it never is when nothing has failed.</summary>
    Hidden,

    /// <summary>Some operation is answered as it never is when nothing has failed.</summary>
    Revealed,
}

/// <summary>Whether a failure is seen by itself, and how.</summary>
/// <param name="Failure">Which.</param>
/// <param name="Disclosure">Whether.</param>
public sealed record Revealed(Variable Failure, Disclosure Disclosure)
{
    /// <summary>From rest to the answer that tells; null unless revealed.</summary>
    public Story? Story { get; init; }

    /// <summary>What then is not as it would be.</summary>
    public IReadOnlyList<Sign> Signs { get; init; } = [];
}

/// <summary>Something seen that a sound panel would not show.</summary>
public abstract record Sign;

/// <summary>The load runs, or does not, and should not, or should.</summary>
public sealed record LoadSign(string Load, bool Runs) : Sign;

/// <summary>The variable stays at a value at which it would not stay, or comes to one to which it would not come.</summary>
public sealed record PartSign(Variable Variable, int Value, bool Stays) : Sign
{
    public string Word => Variable.Values[Value];
}
