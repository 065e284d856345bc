namespace Coldpath.Sheets.Reports;

/// <summary>What every answer that somebody may stake a hand on ends with.</summary>
public static class Cautions
{
    public static IReadOnlyList<string> All { get; } =
    [
        "Verify by measurement: test the tester, test every conductor, test the tester again.",
        "Local codes and licensed practice decide.",
        "The description may not match the panel.",
    ];
}
