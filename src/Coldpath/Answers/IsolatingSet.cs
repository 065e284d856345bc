namespace Coldpath.Answers;

/// <param name="Isolators">What to open and lock, in declared order.</param>
/// <param name="Acts">What else is to be done: "discharge C1", "block the shaft of M1".</param>
public sealed record IsolatingSet(IReadOnlyList<Isolator> Isolators, IReadOnlyList<string> Acts);
