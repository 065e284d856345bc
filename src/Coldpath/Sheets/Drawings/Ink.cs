namespace Coldpath.Sheets.Drawings;

/// <summary>How a line is drawn before a state or finding changes it. Widths are those of ISO 128 for 0.35 mm lines.</summary>
public enum Ink
{
    /// <summary>Conductors and symbols, 0.35 mm.</summary>
    Line,

    /// <summary>Leads, frames, table rules, 0.18 mm.</summary>
    Fine,

    /// <summary>Bus bars, outer frame, 0.7 mm.</summary>
    Heavy,

    /// <summary>Mechanical links: short dashes, 0.25 mm.</summary>
    Dashed,

    /// <summary>Outlines of places: dash and dot, 0.18 mm.</summary>
    DashDot,
}
