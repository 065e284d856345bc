namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>A box with words in it.</summary>
internal static class WordBox
{
    public static Symbol Of(ControlPart part, string words)
    {
        var text = words.Length > 0 ? words : part.Device.Blueprint.Kind.Name;
        var width = LetterWidths.Of(text, Pen.Small, false) > 6.5 ? 20 : 15;
        var pen = Leads.Draw(part, 3.75, width - 3.75, width);
        return pen.Frame(3.75, -2.5, width - 3.75, 2.5)
            .Fit(text, width / 2.0, 0.65, width - 8.5, Anchor.Middle)
            .Lying(width);
    }
}
