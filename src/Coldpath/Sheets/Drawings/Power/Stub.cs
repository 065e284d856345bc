namespace Coldpath.Sheets.Drawings.Power;

/// <summary>What is lettered or drawn right at a port: where its net goes on, its name, its way to earth.</summary>
/// <param name="Net">The net's name.</param>
/// <param name="Text">Read from below, beside the wire; empty for the earth alone.</param>
/// <param name="Title">The same in a sentence.</param>
/// <param name="GoesOn">The net has terminals that this sheet does not show.</param>
/// <param name="Earthed">A wire leads to earth here.</param>
/// <param name="Ends">The port has no other wire on this sheet.</param>
/// <param name="Tied">Conductors that are drawn as one line at this port are joined to each other: a star point.</param>
internal sealed record Stub(
    Port Port,
    string Net,
    string Text,
    string Title,
    bool GoesOn,
    bool Earthed,
    bool Ends,
    bool Tied
)
{
    public const double TextSize = 2.5;
    private const double Margin = 2;
    private const double EarthHeight = 7.5;
    private const double TieHeight = 5;

    /// <summary>Room that it needs between the symbol and the channel, a multiple of 2.5 mm.</summary>
    public double Height
    {
        get
        {
            var text = Text.Length == 0 ? 0 : LetterWidths.Of(Text, TextSize, false) + Margin * 2;
            return Math.Ceiling((text + (Earthed ? EarthHeight : 0) + (Tied ? TieHeight : 0)) / 2.5) * 2.5;
        }
    }
}
