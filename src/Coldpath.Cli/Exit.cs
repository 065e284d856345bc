namespace Coldpath.Cli;

/// <summary>What the process says of itself at its end; of several the highest counts.</summary>
public enum Exit
{
    Clean = 0,

    /// <summary>Findings at or above the asked severity, an own set that does not isolate, text not formatted.</summary>
    Findings = 1,

    /// <summary>Wrong use, or input that cannot be read or parsed.</summary>
    Unusable = 2,

    /// <summary>The work was bounded, interrupted or broken off: nothing is proved.</summary>
    Unfinished = 3,
}
