using Coldpath.Devices;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Symbols already made: devices alike look alike, on every sheet that is tried.</summary>
internal sealed class SymbolBook
{
    private readonly Dictionary<Blueprint, Dictionary<string, Symbol>> made = new(
        ReferenceEqualityComparer.Instance
    );

    public Symbol Of(PowerPart part)
    {
        var ports = string.Join(' ', part.Ports.Select(p => $"{p.Name}/{p.Above}/{p.X}/{p.Conductors}"));
        var poles = string.Join(' ', part.Poles.Select(p => $"{p.From}-{p.To}-{string.Join('/', p.Each)}"));
        var key = $"{part.Rules} {part.OneLine} {ports} {poles}";
        if (!made.TryGetValue(part.Device.Blueprint, out var alike))
            made.Add(part.Device.Blueprint, alike = new(StringComparer.Ordinal));
        return alike.TryGetValue(key, out var known) ? known : alike[key] = PowerSymbols.Of(part);
    }
}
