namespace Coldpath.Circuit.Diagrams;

/// <summary>The node budget is spent: the search that built the diagrams ends as bounded, never as complete.</summary>
public sealed class DiagramLimitException : Exception
{
    public DiagramLimitException()
        : this("the node budget is spent") { }

    public DiagramLimitException(string message)
        : base(message) { }

    public DiagramLimitException(string message, Exception inner)
        : base(message, inner) { }
}
