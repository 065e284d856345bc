using Coldpath.Inspection;

namespace Coldpath.Sites;

/// <summary>One independent piece of checking.</summary>
/// <param name="Name">What is being checked, for whoever waits.</param>
/// <param name="Check">Does it.</param>
public sealed record CheckPiece(string Name, Func<CheckReport> Check);
