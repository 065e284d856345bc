namespace Coldpath.Sheets.Reports.Text;

/// <summary>
/// A stretch of text of one style. A class, because lists of own value types are compiled at every start even in a
/// ReadyToRun build.
/// </summary>
public sealed record Run(string Text, Style Style);
