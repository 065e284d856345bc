using Coldpath.Findings;

namespace Coldpath.Sheets.Drawings;

public enum FigureKind
{
    /// <summary>A device or a part of one.</summary>
    Symbol,

    /// <summary>All lines of one net on one sheet; its shapes are polylines of upright and level pieces, and dots.</summary>
    Wire,

    /// <summary>Letters about a device, a net or a place.</summary>
    Label,

    /// <summary>Where a net goes on: another sheet, rung, rail or device.</summary>
    Reference,

    /// <summary>A mechanical link or a declared pair.</summary>
    Link,

    /// <summary>Around what stands in one place.</summary>
    Outline,

    /// <summary>Frame, title block, legend: not part of the circuit.</summary>
    Paper,
}

/// <summary>What belongs together on paper and is one thing to a reader.</summary>
public sealed record Figure
{
    public required FigureKind Kind { get; init; }

    /// <summary>A sentence for screen readers and for a pointer that rests on it.</summary>
    public required string Title { get; init; }
    public required IReadOnlyList<Shape> Shapes { get; init; }

    /// <summary>Its tag; null for wires and paper.</summary>
    public string? Device { get; init; }

    /// <summary>The words for the part drawn ("coil", "NO", "at"); null for the device's power side.</summary>
    public string? Part { get; init; }

    /// <summary>Terminals that it shows, by their names in the device ("1/L1"), or for a wire "K1:1/L1".</summary>
    public IReadOnlyList<string> Terminals { get; init; } = [];

    /// <summary>The net that it is part of or leads on; null for devices and paper.</summary>
    public string? Net { get; init; }

    /// <summary>Where it is written in the text.</summary>
    public Span? Span { get; init; }
    public Tone Tone { get; init; }

    /// <summary>What it covers; figures without shapes are not drawn.</summary>
    public Box Bounds => Box.Around(Shapes.Select(s => s.Bounds)) ?? default;

    public Figure Moved(double x, double y) => this with { Shapes = [.. Shapes.Select(s => s.Moved(x, y))] };

    public Figure Scaled(double by) =>
        by == 1 ? this : this with { Shapes = [.. Shapes.Select(s => s.Scaled(by))] };
}
