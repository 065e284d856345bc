using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels;

/// <summary>What a declaration came to.</summary>
public sealed record MadeDevice(
    Blueprint? Blueprint,
    string? Place,
    bool Standby,
    Knowledge Knowledge,
    IReadOnlyList<Finding> Findings
);

/// <summary>Makes a device from its declaration.</summary>
public delegate MadeDevice MakeDevice(DeclarationSyntax declaration, WordSyntax tag, PanelFacts facts);
