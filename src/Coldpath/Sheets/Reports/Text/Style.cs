namespace Coldpath.Sheets.Reports.Text;

/// <summary>What a stretch of text is, for whoever colours it; never the only sign of it.</summary>
public enum Style
{
    Plain,
    Strong,
    Faint,
    Danger,
    Defect,
    Caution,
    Note,
    Good,
}
