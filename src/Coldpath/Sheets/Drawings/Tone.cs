namespace Coldpath.Sheets.Drawings;

/// <summary>What a drawn state or finding says of a figure. Each tone differs in weight and dash, not in colour alone.</summary>
public enum Tone
{
    /// <summary>No state is drawn.</summary>
    Plain,
    SolidlyLive,

    /// <summary>Live through a load, leakage, backfeed or store, or not known.</summary>
    LooselyLive,
    Dead,

    /// <summary>On the path or among the devices of the finding that is drawn.</summary>
    Marked,
}
