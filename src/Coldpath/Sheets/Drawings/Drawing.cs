namespace Coldpath.Sheets.Drawings;

/// <summary>A placed drawing: everything has its place on a sheet, nothing says how it is rendered.</summary>
/// <param name="Title">The panel's name.</param>
public sealed record Drawing(string Title, IReadOnlyList<PlacedSheet> Sheets);

/// <param name="Number">From 1.</param>
/// <param name="Name">"power", "control", or both.</param>
/// <param name="Width">Of the paper, in millimetres.</param>
/// <param name="Height">Of the paper, in millimetres.</param>
/// <param name="Figures">In the order they are drawn.</param>
public sealed record PlacedSheet(
    int Number,
    string Name,
    double Width,
    double Height,
    IReadOnlyList<Figure> Figures
);
