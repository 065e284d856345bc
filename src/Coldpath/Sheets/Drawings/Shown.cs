namespace Coldpath.Sheets.Drawings;

/// <summary>What a drawing shows beyond the wiring: a state of the panel, or a finding.</summary>
public sealed record Shown
{
    /// <summary>The wiring alone, everything at rest.</summary>
    public static Shown Wiring { get; } = new();

    /// <summary>One line for the title block, "after S1 = HAND"; null when nothing is shown.</summary>
    public string? Caption { get; init; }

    /// <summary>By net name; nets not in it are <see cref="Tone.Plain"/>.</summary>
    public IReadOnlyDictionary<string, Tone> Nets { get; init; } = new Dictionary<string, Tone>();

    /// <summary>Which elements conduct, by element id of the netlist; null when no state is shown: all stand at rest.</summary>
    public IReadOnlyDictionary<string, bool>? Closed { get; init; }

    /// <summary>Tags of devices that a finding names.</summary>
    public IReadOnlySet<string> Marked { get; init; } = new HashSet<string>();

    public Tone ToneOf(string net) => Nets.GetValueOrDefault(net, Tone.Plain);
}
