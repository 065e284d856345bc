using Coldpath.Devices;
using Coldpath.Findings;

namespace Coldpath.Panels;

/// <summary>How the writer knows of a device.</summary>
public enum Knowledge
{
    Described,
    Seen,
    FromDrawing,
}

/// <summary>A device of the panel: what it is, where it is, and the contacts of it that are used.</summary>
public sealed record PlacedDevice
{
    public required string Tag { get; init; }
    public required Blueprint Blueprint { get; init; }

    /// <summary>As written after "in"; null when not said.</summary>
    public string? Place { get; init; }

    /// <summary>Stays open when the panel is powered.</summary>
    public bool Standby { get; init; }
    public Knowledge Knowledge { get; init; }

    /// <summary>What the declaration says of its ratings, as written, comma by comma: "140 A AC-3", "coil 120 V".</summary>
    public IReadOnlyList<string> Written { get; init; } = [];

    /// <summary>Its declaration.</summary>
    public required Span Span { get; init; }

    /// <summary>Those of its kind, then those of contacts in use, then others that are named, as on a strip.</summary>
    public IReadOnlyList<string> Terminals { get; init; } = [];

    /// <summary>Contacts of its families that are wired, in the order of their numbers.</summary>
    public IReadOnlyList<Contact> Contacts { get; init; } = [];
}

/// <summary>A contact made from a family by being used.</summary>
/// <param name="Family">Its sort.</param>
/// <param name="Number">What stands for the star of the terminal patterns: 1 in 13-14.</param>
/// <param name="Left">Terminal on its line side, "13".</param>
/// <param name="Right">Terminal on its load side, "14".</param>
/// <param name="Positions">Positions in which it is closed; empty unless the family goes by positions.</param>
public sealed record Contact(
    ContactFamily Family,
    int Number,
    string Left,
    string Right,
    IReadOnlyList<string> Positions
)
{
    /// <summary>As written after the colon: "13-14".</summary>
    public string Name => $"{Left}-{Right}";
}
