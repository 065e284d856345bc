namespace Coldpath.Notation.Formatting;

/// <summary>One row of the formatted text before its columns are aligned.</summary>
/// <param name="Family">Neighbours of one family share columns; null for a row that shares none.</param>
/// <param name="Indent">Spaces in front.</param>
/// <param name="Cells">The row's parts; all but the last are padded. Empty for a row with only a comment.</param>
/// <param name="Comment">The comment at its end, or the whole row.</param>
/// <param name="AfterGap">Whether a blank row stands before it.</param>
internal sealed record Row(
    string? Family,
    int Indent,
    IReadOnlyList<string> Cells,
    string? Comment,
    bool AfterGap
);
