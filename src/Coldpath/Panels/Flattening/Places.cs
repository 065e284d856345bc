using Coldpath.Findings;

namespace Coldpath.Panels.Flattening;

/// <summary>Places in the text as the netlist gives them.</summary>
internal static class Places
{
    /// <summary>Line and column of the start and of the end, from 1, the end exclusive.</summary>
    public static IReadOnlyList<int> Of(Span span)
    {
        var ((startLine, startColumn), (endLine, endColumn)) = (span.From, span.To);
        return [startLine, startColumn, endLine, endColumn];
    }
}
