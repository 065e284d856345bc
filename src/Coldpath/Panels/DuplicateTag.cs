using Coldpath.Findings;

namespace Coldpath.Panels;

/// <summary>Two devices declared with one tag; the panel has the first.</summary>
public sealed record DuplicateTag(string Tag, Span First, Span Second);
