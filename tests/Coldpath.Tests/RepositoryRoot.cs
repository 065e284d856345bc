namespace Coldpath.Tests;

/// <summary>Where the project lies, found upwards from the test's own folder.</summary>
internal static class RepositoryRoot
{
    public static string Path { get; } = Find();

    private static string Find()
    {
        var at = AppContext.BaseDirectory;
        while (!File.Exists(System.IO.Path.Combine(at, "Coldpath.slnx")))
            at = System.IO.Path.GetDirectoryName(at) ?? throw new DirectoryNotFoundException("Coldpath.slnx");
        return at;
    }
}
