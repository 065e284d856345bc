using System.Numerics;
using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>All that <c>check</c> has to say about one description.</summary>
public sealed record CheckReport
{
    public required SourceText Source { get; init; }

    /// <summary>The panel's name; the source's name where the header could not be read.</summary>
    public required string Panel { get; init; }

    /// <summary>Rule set, "NEC" or "IEC": decides the words on the screen.</summary>
    public string Rules { get; init; } = "IEC";

    /// <summary>False when the text could not be read as a panel, so that nothing was checked but the text.</summary>
    public bool Readable { get; init; } = true;

    /// <summary>False only when the search was bounded or interrupted, or rests on what the engine does not decide.</summary>
    public required bool Complete { get; init; }

    /// <summary>Why it is not complete, one sentence each without a full stop; empty when it is.</summary>
    public IReadOnlyList<string> Incomplete { get; init; } = [];

    /// <summary>Exact number of states covered; null when none were searched.</summary>
    public BigInteger? States { get; init; }

    /// <summary>How many failures were reckoned with at once.</summary>
    public int Failures { get; init; }

    /// <summary>How many failures there are that can.</summary>
    public int CanFail { get; init; }

    /// <summary>Waived ones included, in the order of the source.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Names of the checks that were made, in order of their codes.</summary>
    public IReadOnlyList<string> ChecksMade { get; init; } = [];
    public IReadOnlyList<NotChecked> NotChecked { get; init; } = [];

    /// <summary>Intent lines that were proved, as written in the source.</summary>
    public IReadOnlyList<string> Proved { get; init; } = [];

    /// <summary>What the description left open and how it was taken, one sentence each.</summary>
    public IReadOnlyList<string> Assumed { get; init; } = [];
}
