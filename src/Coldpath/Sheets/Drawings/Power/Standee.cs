using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A block with its symbol, letters and stubs: all that it needs room for. Millimetres from its first port.</summary>
internal sealed record Standee(
    Block Block,
    Symbol Symbol,
    UnitLabel Label,
    IReadOnlyList<Stub> Stubs,
    double Pitch
)
{
    /// <summary>Between a symbol and its label.</summary>
    private const double Aside = 2.5;

    /// <summary>Letters that stand upright beside a wire reach this far to its left.</summary>
    private const double StubReach = 5;

    public double StubAbove => Stubs.Where(s => s.Port.Above).Select(s => s.Height).DefaultIfEmpty(0).Max();

    public double StubBelow => Stubs.Where(s => !s.Port.Above).Select(s => s.Height).DefaultIfEmpty(0).Max();

    public double Left =>
        Math.Min(
            Symbol.Body.Left,
            Stubs.Select(s => s.Port.Slot * Pitch).DefaultIfEmpty(0).Min() - StubReach
        );

    public double LabelLeft => Math.Max(Symbol.Body.Right, Block.Ports.Max(p => p.Slot) * Pitch) + Aside;

    public double Right => LabelLeft + Label.Width;

    /// <summary>From the upper ports down.</summary>
    public double Depth => Math.Max(Symbol.Height + StubBelow, Label.Height);

    public static Standee Of(Block block, PowerStyle style, DeviceLinks links, IEnumerable<Stub> stubs)
    {
        var ports = block.Ports.Select(p => new PowerPort(
            string.Join(' ', p.Terminals.Select(t => t.Name)),
            p.Above,
            p.Slot * style.Pitch,
            p.Terminals.Count
        ));
        var device = block.Unit.Device;
        var symbol = style.Symbols.Of(new(device, style.Rules, [.. ports], block.Poles, style.OneLine));
        return new(block, symbol, UnitLabel.Of(device, links.Of(device.Tag)), [.. stubs], style.Pitch);
    }
}
