using Coldpath.Devices;
using Coldpath.Notation;
using Coldpath.Panels.Binding;

namespace Coldpath.Panels;

/// <summary>From what was read to the panel and its netlist.</summary>
public static class PanelBinder
{
    /// <summary>Never throws on anything that was read; what is wrong becomes findings, and then there is no netlist.</summary>
    /// <param name="parsed">Its findings are among the result's.</param>
    /// <param name="library">The kinds beside the panel's own.</param>
    public static BoundResult Bind(ParseResult parsed, KindLibrary library)
    {
        var kinds = new KindMaking(parsed.Panel, library);
        return new Binder(parsed, kinds.OfKinds, kinds.Make).Bind();
    }
}
