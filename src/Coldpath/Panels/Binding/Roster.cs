using Coldpath.Devices;
using Coldpath.Findings;

namespace Coldpath.Panels.Binding;

/// <summary>A tag as declared; without a blueprint when its declaration could not be understood.</summary>
/// <param name="IsNeighbour">It belongs to another panel of the site.</param>
internal sealed record Declared(string Tag, Blueprint? Blueprint, Span Span, bool IsNeighbour = false);

/// <summary>The tags of a panel, in declared order; of two devices with one tag the first counts.</summary>
internal sealed class Roster
{
    private readonly Dictionary<string, Declared> byTag = new(StringComparer.Ordinal);
    private readonly List<Declared> inOrder = [];
    private readonly List<DuplicateTag> duplicates = [];

    public IReadOnlyList<Declared> InOrder => inOrder;
    public IReadOnlyList<DuplicateTag> Duplicates => duplicates;

    public void Add(Declared device)
    {
        if (byTag.TryAdd(device.Tag, device))
            inOrder.Add(device);
        else
            duplicates.Add(new DuplicateTag(device.Tag, byTag[device.Tag].Span, device.Span));
    }

    /// <summary>A device of another panel, which a declared one of that tag hides.</summary>
    public void AddNeighbour(Declared device)
    {
        if (byTag.TryAdd(device.Tag, device with { IsNeighbour = true }))
            inOrder.Add(byTag[device.Tag]);
    }

    public Declared? Find(string tag) => byTag.GetValueOrDefault(tag);
}
