using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices;

/// <summary>One device as the panel declares it.</summary>
/// <param name="Tag">For messages.</param>
/// <param name="Ratings">Without what is common to all kinds (see <see cref="CommonRatings"/>).</param>
/// <param name="Span">The declaration.</param>
public sealed record DeviceDeclaration(string Tag, IReadOnlyList<AtomSyntax> Ratings, Span Span);

/// <summary>What came of filling a kind in.</summary>
/// <param name="Blueprint">Null when the kind's text or a missing rating leaves nothing to build.</param>
/// <param name="Findings">
/// About the declaration (D…) and about the kind's own text (K…); the latter come with each device of the kind.
/// </param>
public sealed record Instantiation(Blueprint? Blueprint, IReadOnlyList<Findings.Finding> Findings);
