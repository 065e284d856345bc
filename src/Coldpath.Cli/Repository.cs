namespace Coldpath.Cli;

/// <summary>Names of files for a log that others read: relative to the repository, absolute outside of it.</summary>
internal static class Repository
{
    public static string NameOf(string path, Outside outside)
    {
        if (path == "-")
            return "stdin";
        var name = Path.GetRelativePath(Root(outside.Directory), outside.Absolute(path)).Replace('\\', '/');
        return name.StartsWith("../", StringComparison.Ordinal) || Path.IsPathRooted(name)
            ? outside.Absolute(path).Replace('\\', '/')
            : name;
    }

    /// <summary>The nearest directory upwards that holds .git; the directory itself where there is none.</summary>
    private static string Root(string directory)
    {
        for (var at = directory; at is not null; at = Path.GetDirectoryName(at))
            if (Path.Exists(Path.Combine(at, ".git")))
                return at;
        return directory;
    }
}
