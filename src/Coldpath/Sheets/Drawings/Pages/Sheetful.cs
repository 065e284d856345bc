using Coldpath.Sheets.Drawings.Power;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>What goes on one sheet, before it has a frame and a number.</summary>
/// <param name="Name">"power" or "control".</param>
internal sealed record Sheetful(string Name, PlacedPart Content);
