using Coldpath.Devices;
using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// On which side of its unit a terminal stands: by what feeds it inside the device, else by what the kind says, else by
/// how chains touch it.
/// </summary>
internal sealed class Sidedness
{
    private readonly Blueprint blueprint;
    private readonly HashSet<string> begins;
    private readonly HashSet<string> fed;
    private readonly HashSet<string> entered;

    /// <param name="touches">How chains touch the unit.</param>
    public Sidedness(Blueprint blueprint, IReadOnlyList<ElementPath> paths, IReadOnlyList<Passage> touches)
    {
        this.blueprint = blueprint;
        begins = Named(paths.Select(p => p.From));
        entered = Named(touches.SelectMany(t => t.Left));
        // What is fed and feeds on, such as a tap, stands below only where the kind has it on the load side.
        fed = Named(paths.Where(p => p is { IsThrough: true, IsLoad: false }).Select(p => p.To));
        fed.RemoveWhere(t => begins.Contains(t) && !IsLoad(t));
        fed.UnionWith(paths.Where(p => p.IsThrough).Select(p => p.To).Where(t => !begins.Contains(t)));
    }

    public bool IsAbove(string terminal) =>
        fed.Contains(terminal)
            ? IsLine(terminal) && !IsLoad(terminal)
            : begins.Contains(terminal)
                || IsLine(terminal)
                || (entered.Contains(terminal) && !IsLoad(terminal));

    /// <summary>A bar that no element joins to another stands below too when it is both line and load side.</summary>
    public bool IsBelow(string terminal) =>
        !IsAbove(terminal)
        || (!fed.Contains(terminal) && !begins.Contains(terminal) && IsLine(terminal) && IsLoad(terminal));

    private bool IsLine(string terminal) => blueprint.LineSide.Contains(terminal);

    private bool IsLoad(string terminal) => blueprint.LoadSide.Contains(terminal);

    private static HashSet<string> Named(IEnumerable<string> terminals) =>
        terminals.ToHashSet(StringComparer.Ordinal);
}
