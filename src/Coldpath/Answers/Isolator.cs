namespace Coldpath.Answers;

/// <param name="Device">Its tag.</param>
/// <param name="Place">Null when the description does not say.</param>
/// <param name="Rank">1: isolating device; 2: needs a further measure.</param>
/// <param name="Lockable">Lockable open.</param>
/// <param name="VisibleBreak">Its blades can be seen.</param>
public sealed record Isolator(string Device, string? Place, int Rank, bool Lockable, bool VisibleBreak);
