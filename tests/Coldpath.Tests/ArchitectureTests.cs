using System.Text.RegularExpressions;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests;

/// <summary>A room uses only the rooms before it, and the library touches nothing outside itself.</summary>
public partial class ArchitectureTests
{
    /// <summary>In the order of the data's way.</summary>
    private static readonly string[] Rooms =
    [
        "Findings",
        "Notation",
        "Devices",
        "Panels",
        "Wiring",
        "Circuit",
        "Standards",
        "Inspection",
        "Answers",
        "Sites",
        "Sheets",
    ];

    /// <summary>Devices describe themselves as small netlists, so the graph types may be used from there on.</summary>
    private static readonly (string Room, string Uses)[] Exceptions =
    [
        ("Devices", "Wiring"),
        ("Panels", "Wiring"),
    ];

    private static readonly string Root = RepositoryRoot.Path;

    [Fact]
    public void No_room_reaches_up() =>
        Files("src/Coldpath")
            .SelectMany(file =>
                Uses(file).Where(used => Reaches(RoomOf(file), used)).Select(used => $"{file} uses {used}")
            )
            .Should()
            .BeEmpty();

    [Fact]
    public void Only_the_command_line_touches_console_files_clock_and_randomness() =>
        Files("src/Coldpath")
            .Where(file => !file.Contains("/Generated/", StringComparison.Ordinal))
            .SelectMany(file => Outside().Matches(Code(file)).Select(match => $"{file} says {match.Value}"))
            .Should()
            .BeEmpty();

    [Fact]
    public void The_rooms_are_those_that_are_described() =>
        Directory
            .GetDirectories(Path.Combine(Root, "src/Coldpath"))
            .Select(Path.GetFileName)
            .Except(["bin", "obj"])
            .Should()
            .BeSubsetOf(Rooms);

    [Theory]
    [InlineData("Wiring", "Inspection", true)]
    [InlineData("Wiring", "Findings", false)]
    [InlineData("Devices", "Wiring", false)]
    [InlineData("Notation", "Wiring", true)]
    [InlineData("Answers", "Answers", false)]
    public void Reaching_up_is_seen(string room, string used, bool reaches) =>
        Reaches(room, used).Should().Be(reaches);

    [Theory]
    [InlineData("Console.WriteLine(x)")]
    [InlineData("File.ReadAllText(path)")]
    [InlineData("DateTime.UtcNow")]
    [InlineData("new Random(1)")]
    [InlineData("Stopwatch.StartNew()")]
    [InlineData("Guid.NewGuid()")]
    public void Touching_the_outside_is_seen(string code) => Outside().IsMatch(code).Should().BeTrue();

    private static bool Reaches(string room, string used) =>
        Array.IndexOf(Rooms, used) > Array.IndexOf(Rooms, room) && !Exceptions.Contains((room, used));

    /// <summary>Rooms named in "using" lines or written out.</summary>
    private static IEnumerable<string> Uses(string file) =>
        Named().Matches(Code(file)).Select(match => match.Groups[1].Value).Distinct();

    private static string RoomOf(string file) => file.Split('/')[2];

    /// <summary>Relative paths of the sources in rooms; what stands above all rooms may use them all.</summary>
    private static IEnumerable<string> Files(string under) =>
        Directory
            .EnumerateFiles(Path.Combine(Root, under), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Where(file => file.Split('/') is [_, _, not ("bin" or "obj"), _, ..])
            .Order(StringComparer.Ordinal);

    /// <summary>Without comments and strings.</summary>
    private static string Code(string file) =>
        Unspoken().Replace(File.ReadAllText(Path.Combine(Root, file)), "");

    [GeneratedRegex("//[^\\n]*|\"(?:[^\"\\\\\\n]|\\\\.)*\"")]
    private static partial Regex Unspoken();

    [GeneratedRegex(@"\bColdpath\.([A-Z]\w+)")]
    private static partial Regex Named();

    [GeneratedRegex(
        @"\b(Console|File|FileInfo|Directory|DirectoryInfo|FileStream|Environment|DateTime|DateTimeOffset|Stopwatch|TimeProvider|Random|RandomNumberGenerator|Process|Thread|Task|HttpClient|Socket)\.[A-Z]|\bnew (Random|FileStream|Thread|Timer)\b|Guid\.NewGuid"
    )]
    private static partial Regex Outside();
}
