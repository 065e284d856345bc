using Coldpath.Findings;

namespace Coldpath.Panels.Sites;

/// <summary>Panels, what joins them, and what stands between them.</summary>
/// <param name="Own">The site's own devices and wires; its nets have terminals of panels in them, as "P1/X1:5".</param>
/// <param name="Members">In the order of the text.</param>
/// <param name="Joints">Nets of the site that reach into panels, in the order of <see cref="Panel.Nets"/>.</param>
public sealed record Site(
    BoundResult Own,
    IReadOnlyList<SiteMember> Members,
    IReadOnlyList<SiteJoint> Joints
);

/// <summary>What binding the description of a site gave.</summary>
/// <param name="Own">The site's own devices and wires, as far as understood.</param>
/// <param name="Site">Null when anything is wrong with it or a panel of it.</param>
/// <param name="Findings">Of all files; each lies in the file that it is about.</param>
public sealed record BoundSite(Panel Own, Site? Site, IReadOnlyList<Finding> Findings);

/// <summary>Terminals of panels that are joined, with each other or with devices of the site.</summary>
/// <param name="Net">The site's own net.</param>
/// <param name="Ends">In the order of the net's terminals.</param>
public sealed record SiteJoint(string Net, IReadOnlyList<SiteEnd> Ends);

/// <summary>Where a joint reaches into a panel.</summary>
/// <param name="Member">The panel.</param>
/// <param name="Terminal">The terminal there.</param>
/// <param name="Net">The panel's own net at it.</param>
/// <param name="FeedsSupply">The terminal is one of a supply's, which the joint stands in for.</param>
public sealed record SiteEnd(SiteMember Member, Terminal Terminal, string Net, bool FeedsSupply);
