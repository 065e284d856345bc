using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>Which sign an element of a pole has, by the kind's symbol name and the rules.</summary>
internal static class Signing
{
    public static Sign? Of(PowerPart part, ElementType type, bool closed)
    {
        var symbol = part.Device.Blueprint.Kind.Symbol;
        var ieee = part.Rules == "NEC";
        return type switch
        {
            ElementType.Contact => symbol switch
            {
                "breaker" => ieee ? Switches.BreakerArc(closed) : Switches.Blade(Function.Breaker, closed),
                "contactor" => ieee ? Switches.Bars(closed) : Switches.Blade(Function.Contactor, closed),
                "relay" or "on-delay timer" or "off-delay timer" or "safety relay" => ieee
                    ? Switches.Bars(closed)
                    : Switches.Blade(Function.None, closed),
                "disconnector" or "fused disconnector" or "transfer switch" => ieee
                    ? Switches.Knife(closed)
                    : Switches.Blade(Function.SwitchDisconnector, closed),
                "plug and socket" => Plugs.Of(closed),
                _ => ieee ? Switches.Knife(closed) : Switches.Blade(Function.None, closed),
            },
            ElementType.Thermal => symbol switch
            {
                "fuse" or "fused disconnector" => ieee ? Links.CappedFuse(closed) : Links.Fuse(closed),
                "current transformer" => ieee ? Windings.CurrentLoops : Windings.CurrentRing,
                "overload relay" => ieee ? Links.HeaterHooks : Links.HeaterStep,
                "breaker" => ieee ? Links.HeaterHooks : Links.HeaterStep,
                _ => null,
            },
            ElementType.Series => symbol switch
            {
                "reactor" => Windings.Bumps,
                "resistor" => ieee ? Links.Zigzag : Links.Resistor,
                _ => null,
            },
            ElementType.Load => symbol switch
            {
                "heater" => Links.Heater,
                "surge arrester" => Links.Arrester,
                "resistor" => ieee ? Links.Zigzag : Links.Resistor,
                _ => null,
            },
            ElementType.Diode => Links.Diode,
            _ => null,
        };
    }

    /// <summary>What opens a breaker by itself, below its blade.</summary>
    public static IEnumerable<Sign> Releases(PowerPart part)
    {
        if (part.Device.Blueprint.Kind.Symbol != "breaker" || part.Rules == "NEC")
            return [];
        return part.Device.Blueprint.Ratings.Any(r => r.Name == "type" && r.Text == "magnetic-only")
            ? [Links.MagneticRelease]
            : [Links.HeaterStep, Links.MagneticRelease];
    }
}
