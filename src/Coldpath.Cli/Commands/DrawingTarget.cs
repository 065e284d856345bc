namespace Coldpath.Cli.Commands;

/// <summary>Where a drawing goes.</summary>
/// <param name="File">Its path, or "-" for the standard output.</param>
/// <param name="Format">"svg", "png" or "pdf".</param>
/// <param name="Sheet">The only one asked for, from 1; null for all.</param>
/// <param name="Dpi">Of a PNG.</param>
internal sealed record DrawingTarget(string File, string Format, int? Sheet, int Dpi)
{
    public bool IsStandardOutput => File == "-";

    /// <summary>"x-2.svg" for the second of the sheets of x.svg.</summary>
    public string FileOf(int sheet)
    {
        var ending = Path.GetExtension(File);
        return $"{File[..^ending.Length]}-{sheet}{ending}";
    }
}
