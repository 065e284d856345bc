namespace Coldpath.Standards;

/// <summary>
/// The one table of words that differ between the rule sets. NEC words are those of NFPA 70 article 100, IEC words
/// those of IEC 60050 (parts 195, 441, 826) and IEC 60947-1.
/// </summary>
public sealed record Vocabulary
{
    public required string Earth { get; init; }
    public required string Earthed { get; init; }
    public required string Unearthed { get; init; }

    /// <summary>The neutral or the earthed phase of a supply.</summary>
    public required string EarthedConductor { get; init; }
    public required string UnearthedConductor { get; init; }
    public required string ProtectiveConductor { get; init; }

    /// <summary>What joins a source conductor to earth on purpose.</summary>
    public required string SystemBond { get; init; }
    public required string EarthFault { get; init; }

    /// <summary>A device suitable for isolation.</summary>
    public required string Isolator { get; init; }

    /// <summary>The same, several.</summary>
    public required string Isolators { get; init; }
    public required string MainIsolator { get; init; }

    /// <summary>To isolate, as in "to isolate M1, open and lock".</summary>
    public required string Isolate { get; init; }
    public required string Dead { get; init; }
    public required string Live { get; init; }
    public required string Energised { get; init; }
    public required string ExtraLowVoltage { get; init; }
    public required string LineSide { get; init; }
    public required string LoadSide { get; init; }
    public required string ProspectiveCurrent { get; init; }
    public required string BreakingCapacity { get; init; }
    public required string Star { get; init; }

    public static Vocabulary Nec { get; } =
        new()
        {
            Earth = "ground",
            Earthed = "grounded",
            Unearthed = "ungrounded",
            EarthedConductor = "grounded conductor",
            UnearthedConductor = "ungrounded conductor",
            ProtectiveConductor = "equipment grounding conductor",
            SystemBond = "system bonding jumper",
            EarthFault = "ground fault",
            Isolator = "disconnect",
            Isolators = "disconnects",
            MainIsolator = "main disconnect",
            Isolate = "isolate",
            Dead = "de-energized",
            Live = "energized",
            Energised = "energized",
            ExtraLowVoltage = "extra-low voltage",
            LineSide = "line side",
            LoadSide = "load side",
            ProspectiveCurrent = "available fault current",
            BreakingCapacity = "interrupting rating",
            Star = "wye",
        };

    public static Vocabulary Iec { get; } =
        new()
        {
            Earth = "earth",
            Earthed = "earthed",
            Unearthed = "unearthed",
            EarthedConductor = "earthed conductor",
            UnearthedConductor = "line conductor",
            ProtectiveConductor = "protective conductor",
            SystemBond = "system earthing connection",
            EarthFault = "earth fault",
            Isolator = "isolator",
            Isolators = "isolators",
            MainIsolator = "main isolator",
            Isolate = "isolate",
            Dead = "dead",
            Live = "live",
            Energised = "energised",
            ExtraLowVoltage = "extra-low voltage",
            LineSide = "supply side",
            LoadSide = "load side",
            ProspectiveCurrent = "prospective short-circuit current",
            BreakingCapacity = "breaking capacity",
            Star = "star",
        };

    /// <summary>NEC words for "NEC", IEC words for anything else.</summary>
    public static Vocabulary For(string rules) => rules == "NEC" ? Nec : Iec;
}
