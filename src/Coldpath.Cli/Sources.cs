using System.IO.Enumeration;
using System.Text;
using Coldpath.Findings;
using Coldpath.Notation;

namespace Coldpath.Cli;

/// <summary>Descriptions from files, directories and the standard input.</summary>
internal static class Sources
{
    private static readonly UTF8Encoding Strict = new(false, true);

    /// <summary>
    /// The files meant by <paramref name="paths"/>: a directory stands for every .panel file below it, in the order
    /// of their names.
    /// </summary>
    public static IReadOnlyList<string> Find(IEnumerable<string> paths, Outside outside) =>
        [.. paths.SelectMany(path => Expand(path, outside)).Distinct()];

    /// <param name="path">A file, or "-".</param>
    /// <param name="outside">Where it is read from.</param>
    /// <param name="name">What it is called in messages; the path itself when null.</param>
    public static SourceText Read(string path, Outside outside, string? name = null)
    {
        try
        {
            var bytes = ReadBytes(path, outside);
            var text = Strict.GetString(bytes).TrimStart('\uFEFF');
            return new SourceText(name ?? Shown(path), text)
            {
                Beside = file => Beside(path, file, outside, name),
            };
        }
        catch (DecoderFallbackException)
        {
            throw new UnreadableException($"{path} is not UTF-8 text");
        }
        catch (Exception refused)
            when (refused is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new UnreadableException($"cannot read {path}: {Plain(refused, path)}");
        }
    }

    private static string Shown(string path) => path == "-" ? "stdin" : path.Replace('\\', '/');

    /// <summary>A file that lies relative to where another lies; the standard input lies in the current directory.</summary>
    private static IncludedText Beside(string path, string file, Outside outside, string? name)
    {
        var directory = path == "-" ? "" : Path.GetDirectoryName(path) ?? "";
        var beside = Tidy(Path.Combine(directory, file));
        var shown = name is null ? null : Tidy(Path.Combine(Path.GetDirectoryName(name) ?? "", file));
        try
        {
            return new IncludedText(Read(beside, outside, shown));
        }
        catch (UnreadableException refused)
        {
            return new IncludedText(null, refused.Message[(refused.Message.IndexOf(':') + 1)..].Trim());
        }
    }

    /// <summary>Without "." and with ".." taken back where that can be done, so that one file has one name.</summary>
    private static string Tidy(string path)
    {
        var parts = new List<string>();
        foreach (var part in path.Replace('\\', '/').Split('/'))
            if (part == ".." && parts.Count > 0 && parts[^1] is not (".." or ""))
                parts.RemoveAt(parts.Count - 1);
            else if (part != ".")
                parts.Add(part);
        return string.Join('/', parts);
    }

    public static void Save(string path, string text, Outside outside) =>
        Save(path, () => outside.Save(path, text));

    public static void Save(string path, byte[] bytes, Outside outside) =>
        Save(path, () => outside.Save(path, bytes));

    private static void Save(string path, Action save)
    {
        try
        {
            save();
        }
        catch (Exception refused)
            when (refused is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new UnreadableException($"cannot write {path}: {Plain(refused, path)}");
        }
    }

    private static byte[] ReadBytes(string path, Outside outside)
    {
        using var stream = outside.Open(path);
        var bytes = new byte[Limits.FileBytes + 1];
        var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        if (length > Limits.FileBytes)
            throw new UnreadableException(
                $"{path} is larger than 4 MB, the most that a description may have"
            );
        return bytes[..length];
    }

    private static string[] Expand(string path, Outside outside)
    {
        if (path == "-" || !Directory.Exists(outside.Absolute(path)))
            return [path];
        var found = Below(outside.Absolute(path))
            .Select(file => Path.Combine(path, Path.GetRelativePath(outside.Absolute(path), file)))
            .Order(StringComparer.Ordinal)
            .ToArray();
        return found.Length > 0 ? found : throw new UnreadableException($"no .panel file in {path}");
    }

    /// <summary>Links to directories are not followed: they may go in circles.</summary>
    private static FileSystemEnumerable<string> Below(string directory) =>
        new(
            directory,
            (ref entry) => entry.ToFullPath(),
            new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None }
        )
        {
            ShouldIncludePredicate = (ref entry) => !entry.IsDirectory && entry.FileName.EndsWith(".panel"),
            ShouldRecursePredicate = (ref entry) => (entry.Attributes & FileAttributes.ReparsePoint) == 0,
        };

    private static string Plain(Exception refused, string path) =>
        refused switch
        {
            FileNotFoundException or DirectoryNotFoundException => "there is no such file",
            UnauthorizedAccessException => "not allowed",
            _ => refused.Message.Replace(path, "it", StringComparison.Ordinal),
        };
}
