using Coldpath.Devices;
using Coldpath.Notation;
using Coldpath.Panels.Binding;
using Coldpath.Panels.Sites;

namespace Coldpath.Panels;

/// <summary>From what was read to the panel and its netlist.</summary>
public static class PanelBinder
{
    /// <summary>Never throws on anything that was read; what is wrong becomes findings, and then there is no netlist.</summary>
    /// <param name="parsed">Its findings are among the result's.</param>
    /// <param name="library">The kinds beside the panel's own.</param>
    public static BoundResult Bind(ParseResult parsed, KindLibrary library) =>
        Bind(parsed, library, Neighbours.None);

    internal static BoundResult Bind(ParseResult parsed, KindLibrary library, Neighbours neighbours)
    {
        var (with, ofFiles) = new IncludedKinds().With(library, parsed.Panel);
        var kinds = new KindMaking(parsed.Panel, with);
        return new Binder(parsed, [.. ofFiles, .. kinds.OfKinds], kinds.Make, neighbours).Bind();
    }
}
