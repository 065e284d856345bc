using Coldpath.Sheets.Drawings.Symbols.Boxes;
using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols;

/// <summary>The symbol for what stands on a power sheet: by its kind's symbol name, else by what lies between its ports.</summary>
internal static class PowerSymbols
{
    public static Symbol Of(PowerPart part)
    {
        if (part.Ports.Count == 0)
            return new Pen().Frame(-2.5, 0, 2.5, 5).Hanging(5);
        return ByName(part) ?? GenericBox.Of(part);
    }

    /// <summary>Null when there is no such symbol or the ports are not what it has.</summary>
    private static Symbol? ByName(PowerPart part) =>
        part.Device.Blueprint.Kind.Symbol switch
        {
            "supply" => Sources.Supply(part),
            "generator" => Sources.Generator(part),
            "earth" => Earths.Of(part),
            "distribution block" => Bars.Of(part),
            "terminal strip" => Strips.Of(part),
            "motor" or "dc motor" => Motors.Of(part),
            "transformer" => Transformers.Of(part),
            "autotransformer" => Autotransformers.Of(part),
            "capacitor" => Capacitors.Of(part),
            "drive" => Drives.Of(part),
            "power supply" or "rectifier" or "ups" => Converters.Of(part),
            "soft starter" => SoftStarters.Of(part),
            "protection relay" => Windows.Of(part) ?? Sensing.Of(part),
            "lamp" or "horn" => Signals.Of(part),
            _ => PoleBank.Of(part),
        };
}
