namespace Coldpath.Sheets.Drawings;

/// <summary>How a panel is to be drawn.</summary>
/// <param name="Lines">3: every conductor; 1: conductors that run together as one line.</param>
public sealed record DrawRequest(int Lines, Paper Paper)
{
    public bool OneLine => Lines == 1;
}
