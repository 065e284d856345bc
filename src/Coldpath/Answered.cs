using Coldpath.Findings;

namespace Coldpath;

/// <summary>An answer, or what stood in its way: findings in the description, or a problem with the question.</summary>
/// <param name="Answer">Null when there is none.</param>
/// <param name="Findings">What is wrong with the description, when that is why.</param>
/// <param name="Problem">What is wrong with the question, as a sentence without a full stop, when that is why.</param>
public sealed record Answered<T>(T? Answer, IReadOnlyList<Finding> Findings, string? Problem = null)
    where T : class
{
    public static implicit operator Answered<T>(T answer) => new(answer, []);
}
