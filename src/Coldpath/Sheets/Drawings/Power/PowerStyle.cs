namespace Coldpath.Sheets.Drawings.Power;

/// <summary>How power sheets are drawn, and what they share.</summary>
/// <param name="Rules">"IEC" or "NEC": whose symbols.</param>
/// <param name="OneLine">Conductors that run together are one line.</param>
internal sealed record PowerStyle(string Rules, bool OneLine, Shown Shown)
{
    public SymbolBook Symbols { get; } = new();

    /// <summary>From slot to slot, in millimetres.</summary>
    public double Pitch => OneLine ? 15 : 10;
}
