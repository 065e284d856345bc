using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>What stands at one place of a power sheet: the power side of a device.</summary>
/// <param name="Index">In declared order.</param>
/// <param name="Poles">Between its ports, by their places in <paramref name="Ports"/>.</param>
internal sealed record Block(int Index, Unit Unit, IReadOnlyList<Port> Ports, IReadOnlyList<Pole> Poles)
{
    public string Tag => Unit.Device.Tag;
}
