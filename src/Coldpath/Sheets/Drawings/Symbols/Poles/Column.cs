namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>A pole with its place.</summary>
/// <param name="X">Of its upper port.</param>
/// <param name="End">Of its lower port.</param>
internal sealed record Column(Pole Pole, double X, double End)
{
    public bool IsStraight => X == End;
}
