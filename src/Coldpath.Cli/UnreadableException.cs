namespace Coldpath.Cli;

/// <summary>Input that cannot be read or output that cannot be written; the message is for the user.</summary>
internal sealed class UnreadableException(string message) : Exception(message);
