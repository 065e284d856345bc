namespace Coldpath.Sheets.Reports.Text;

/// <summary>A stretch of text of one style.</summary>
public readonly record struct Run(string Text, Style Style);
