using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Panels;

/// <summary>A panel as described, with every name resolved.</summary>
public sealed record Panel
{
    public required string Name { get; init; }

    /// <summary>Number of the drawing; null when not given.</summary>
    public string? Drawing { get; init; }
    public string? Revision { get; init; }

    /// <summary>Rule set, voltage, phases, frequency and earthing.</summary>
    public required PanelFacts System { get; init; }

    /// <summary>In declared order.</summary>
    public IReadOnlyList<PlacedDevice> Devices { get; init; } = [];

    /// <summary>In the order of devices and terminals; the earth is not among them.</summary>
    public IReadOnlyList<PanelNet> Nets { get; init; } = [];
    public IReadOnlyList<Bond> Bonds { get; init; } = [];

    /// <summary>Chains and rungs in the order of the text.</summary>
    public IReadOnlyList<Chain> Chains { get; init; } = [];

    /// <summary>In netlist names.</summary>
    public IReadOnlyList<Intent> Intents { get; init; } = [];
    public IReadOnlyList<Waiver> Waivers { get; init; } = [];
    public IReadOnlyList<UntracedPoint> Untraced { get; init; } = [];
    public IReadOnlyList<DuplicateTag> Duplicates { get; init; } = [];

    /// <summary>Numbers found for contacts named by their sort: "13-14" by the offset where the name starts.</summary>
    public IReadOnlyDictionary<int, string> AllocatedContacts { get; init; } = new Dictionary<int, string>();

    public PlacedDevice? Find(string tag) => Devices.FirstOrDefault(d => d.Tag == tag);

    /// <summary>The declaration of a device; null when there is none of this tag.</summary>
    public Span? SpanOf(string tag) => Find(tag)?.Span;

    /// <summary>Names and terminals of a net as points are written; empty for an unknown one.</summary>
    public IReadOnlyList<string> PointsOf(string net) =>
        Nets.FirstOrDefault(n => n.Name == net) is { } found
            ? [.. found.Names, .. found.Terminals.Select(t => t.ToString())]
            : [];

    /// <summary>Every passing of a part or contact, in the order of the text.</summary>
    public IEnumerable<PartUse> PartUses() =>
        from chain in Chains
        from passage in chain.Passages
        from pole in passage.Poles
        select new PartUse(
            passage.Device,
            passage.Part,
            pole.Left,
            pole.Right,
            passage.Contact,
            passage.Span,
            chain
        );

    /// <summary>Terminals at which wires leave for other panels.</summary>
    public IReadOnlyCollection<Terminal> Leaving { get; init; } = [];

    /// <summary>Terminals that nothing is wired to, in the order of devices and terminals.</summary>
    public IEnumerable<Terminal> UnconnectedTerminals()
    {
        var own = Devices.Select(d => d.Tag).ToHashSet(StringComparer.Ordinal);
        var bonded = Bonds
            .Select(b => b.Net)
            .Concat(Untraced.Select(u => u.Net))
            .ToHashSet(StringComparer.Ordinal);
        return Nets.Where(n => n.Terminals.Count == 1 && !bonded.Contains(n.Name))
            .Select(n => n.Terminals[0])
            .Where(t => own.Contains(t.Device) && !Leaving.Contains(t));
    }
}

/// <summary>A wire from a net to the earth.</summary>
/// <param name="Net">The net's name.</param>
/// <param name="Point">Where it begins, "XD1:N".</param>
/// <param name="Device">The device it belongs to; empty when it begins at a node without devices.</param>
public sealed record Bond(string Net, string Point, string Device, Span Span);

/// <summary>A finding that is accepted, with the reason.</summary>
/// <param name="Check">The finding's name or code.</param>
/// <param name="On">Device tags or points.</param>
public sealed record Waiver(string Check, IReadOnlyList<string> On, string Because, Span Span);

/// <summary>A terminal or node that goes where nobody followed it.</summary>
/// <param name="Point">As written, "X1:7".</param>
/// <param name="Net">The net's name.</param>
/// <param name="Device">Whose terminal it is; empty for a node without devices.</param>
public sealed record UntracedPoint(string Point, string Net, string Device, string? Because, Span Span);

/// <summary>A contact, pole or coil passed by a chain.</summary>
/// <param name="Part">The words around the tag; empty for a bare name.</param>
public sealed record PartUse(
    string Device,
    string Part,
    string Left,
    string Right,
    Contact? Contact,
    Span Span,
    Chain Chain
);
