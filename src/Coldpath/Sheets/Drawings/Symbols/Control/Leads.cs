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

    public static string Positions(ControlPart part) => string.Join(" or ", part.Positions);

    /// <summary>A pole of a switch made for power circuits, drawn with the mark of what it is made for.</summary>
    public static bool IsMainPole(ControlPart part) =>
        part.Part.Length == 0
        && part.Device.Blueprint.Kind.Symbol
            is "breaker"
                or "disconnector"
                or "fused disconnector"
                or "contactor"
                or "transfer switch";

    /// <summary>With a fuse behind its blade.</summary>
    public static bool IsFused(ControlPart part) =>
        IsMainPole(part) && part.Device.Blueprint.Kind.Symbol == "fused disconnector";

    /// <summary>The part's words without the sort of contact: "run" of "NO run".</summary>
    public static string Word(ControlPart part) =>
        string.Join(' ', part.Part.Split(' ').Where(w => w is not ("NO" or "NC" or "at" or "changeover")));
}
