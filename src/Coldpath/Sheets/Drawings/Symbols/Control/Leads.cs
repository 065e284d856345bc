namespace Coldpath.Sheets.Drawings.Symbols.Control;

/// <summary>The two ends of a symbol in a rung, and words about it.</summary>
internal static class Leads
{
    public const double Width = 15;
    public const double Middle = 7.5;

    /// <summary>From the edges to what stands between, with the terminals' names above them.</summary>
    public static Pen Draw(ControlPart part, double from, double to, double width = Width)
    {
        var pen = new Pen();
        pen.Line(0, 0, from, 0).Line(to, 0, width, 0);
        pen.Fit(part.Left, 0.4, -0.6, from - 1, Anchor.Start);
        pen.Fit(part.Right, width - 0.4, -0.6, width - to - 1, Anchor.End);
        return pen;
    }

    /// <summary>The part's words without the sort of contact: "run" of "NO run".</summary>
    public static string Word(ControlPart part) =>
        string.Join(' ', part.Part.Split(' ').Where(w => w is not ("NO" or "NC" or "at" or "changeover")));
}
