namespace Coldpath.Notation;

/// <summary>What the reader takes on. Past a limit there is a finding that names it.</summary>
public static class Limits
{
    /// <summary>Bytes of a file, as UTF-8.</summary>
    public const int FileBytes = 4 * 1024 * 1024;

    /// <summary>Brackets within brackets; blocks within blocks of a kind.</summary>
    public const int Nesting = 200;

    /// <summary>Characters of a name or a number.</summary>
    public const int NameLength = 200;

    /// <summary>Words, numbers and signs of one line, continuations included.</summary>
    public const int LineWords = 10_000;

    /// <summary>Findings of one run.</summary>
    public const int Findings = 1_000;
}
