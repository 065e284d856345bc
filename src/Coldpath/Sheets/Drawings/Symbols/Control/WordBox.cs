namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>A box with words in it.</summary>
internal static class WordBox
{
    public static Symbol Of(ControlPart part, string words)
    {
        var text = words.Length > 0 ? words : part.Device.Blueprint.Kind.Name;
        const double width = 20;
        const double room = width - 10.8;
        var pen = Leads.Draw(part, 5, width - 5, width).Frame(5, -2.5, width - 5, 2.5);
        var rows = Rows(text, room);
        foreach (var (i, row) in rows.Index())
            pen.Fit(row, width / 2, 0.65 - (rows.Count - 1) * 1.1 + i * 2.2, room, Anchor.Middle);
        return pen.Lying(width);
    }

    /// <summary>Broken in two where that is nearest to the middle.</summary>
    private static IReadOnlyList<string> Rows(string text, double room)
    {
        var spaces = text.Index().Where(c => c.Item == ' ').Select(c => c.Index).ToList();
        if (spaces.Count == 0 || LetterWidths.Of(text, Pen.Small, false) <= room)
            return [text];
        var at = spaces.MinBy(s => Math.Abs(s - text.Length / 2.0));
        return [text[..at], text[(at + 1)..]];
    }
}
