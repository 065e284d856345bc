namespace Coldpath.Answers;

/// <param name="Part">The neutral, protective conductor or bond that must be whole.</param>
/// <param name="Turns">Points that turn live when it is broken.</param>
/// <param name="Test">The measurement that shows it, as a sentence without a full stop.</param>
public sealed record WholeOnly(string Part, IReadOnlyList<string> Turns, string Test);
