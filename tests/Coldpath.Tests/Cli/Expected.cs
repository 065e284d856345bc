using System.Text.RegularExpressions;
using Coldpath.Cli;

namespace Coldpath.Tests.Cli;

/// <summary>
/// What commands are known to print, kept in files for a reviewer to read. With COLDPATH_EXPECT=write in the
/// environment the files are written anew instead of compared.
/// </summary>
internal static partial class Expected
{
    public static bool IsWriting => Environment.GetEnvironmentVariable("COLDPATH_EXPECT") == "write";

    public static string Folder => Path.Combine(RepositoryRoot.Path, "tests/Coldpath.Tests/Expected");

    /// <summary>The file for a command: "check-faulty-chatter.txt".</summary>
    public static string FileOf(string command) =>
        NotForNames()
            .Replace(
                command
                    .Replace("--failures 0 ", "", StringComparison.Ordinal)
                    .Replace("panels/", "", StringComparison.Ordinal)
                    .Replace(".panel", "", StringComparison.Ordinal),
                "-"
            )
            .Trim('-') + ".txt";

    /// <summary>A command line and all that came of it.</summary>
    public static string Account(string command)
    {
        var ran = Ran.In(RepositoryRoot.Path, command.Split(' '));
        var end = ran.Exit == Exit.Clean ? "" : $"exit {(int)ran.Exit}\n";
        return $"$ coldpath {command}\n{ran.Out}{ran.Error}{end}";
    }

    [GeneratedRegex("[^A-Za-z0-9]+")]
    private static partial Regex NotForNames();
}
