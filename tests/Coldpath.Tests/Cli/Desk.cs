namespace Coldpath.Tests.Cli;

/// <summary>A directory for one test, gone after it.</summary>
internal sealed class Desk : IDisposable
{
    private readonly DirectoryInfo directory = Directory.CreateTempSubdirectory("coldpath");

    public string Path => directory.FullName;

    public Desk With(string file, string text)
    {
        var path = At(file);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return this;
    }

    public string Read(string file) => File.ReadAllText(At(file));

    public bool Has(string file) => File.Exists(At(file));

    public string At(string file) => System.IO.Path.Combine(Path, file);

    public Ran Run(params string[] arguments) => Ran.In(Path, arguments);

    public void Dispose() => directory.Delete(true);
}
