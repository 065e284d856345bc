using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>What a declaration came to; no blueprint when it was not understood, which has been said.</summary>
internal sealed record MadeDevice(
    Blueprint? Blueprint,
    CommonRatings Common,
    IReadOnlyList<Finding> Findings
);

/// <summary>Makes one device of a declaration.</summary>
internal delegate MadeDevice MakeDevice(DeclarationSyntax declaration, WordSyntax tag, PanelFacts facts);
