namespace Coldpath.Sheets.Drawings;

/// <summary>What a drawing is made for.</summary>
/// <param name="Name">"a4", "letter", "unbounded".</param>
/// <param name="Width">The longer side in millimetres; null when the sheet is as large as its content.</param>
/// <param name="Height">The shorter side in millimetres.</param>
public sealed record Paper(string Name, double? Width, double? Height)
{
    public static Paper Unbounded { get; } = new("unbounded", null, null);

    /// <summary>ISO 216 and ANSI/ASME Y14.1 sizes, and none.</summary>
    public static IReadOnlyList<Paper> All { get; } =
    [
        new("a4", 297, 210),
        new("a3", 420, 297),
        new("letter", 279.4, 215.9),
        new("tabloid", 431.8, 279.4),
        Unbounded,
    ];

    /// <summary>The paper of a name; null when there is none.</summary>
    public static Paper? Find(string name) => All.FirstOrDefault(p => p.Name == name);
}
