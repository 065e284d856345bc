using System.Globalization;
using Coldpath.Findings;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>What the site brings to a panel is not what the panel is made for.</summary>
internal static class SupplyUnfit
{
    public static Finding Finding(SiteMember member, FedSupply supply, Source source, Outline outline)
    {
        var pairs = supply.Arriving(source, outline).ToArray();
        var (a, b) = (pairs[0], pairs.FirstOrDefault(p => p.Here.Name != pairs[0].Here.Name, pairs[0]));
        var here = Volts(FedSupply.Between(a.Here, b.Here));
        var there = Volts(FedSupply.Between(a.There, b.There));
        return new Finding
        {
            Code = "P021",
            Name = "supply-unfit",
            Severity = Severity.Defect,
            Message =
                here == there
                    ? $"{source.Name} reaches {member.Named(supply.Tag)} in another phase order, or may"
                    : $"{source.Name} brings {there} to {member.Named(supply.Tag)}, which is described for {here}",
            Location = member.Span,
            Devices = [member.Named(supply.Tag)],
            Reference = "common practice",
            Remedy =
                here == there
                    ? "join like-named conductors, and look at what may change the phases over on the way"
                    : "correct the description that is wrong, or feed the panel from a supply that fits",
        };
    }

    private static string Volts((double X, double Y) between) =>
        Math.Sqrt((between.X * between.X) + (between.Y * between.Y))
            .ToString("0", CultureInfo.InvariantCulture) + " V";
}
