using System.Text;

namespace Coldpath.Cli;

/// <summary>All that the command line touches of the world: streams, files, environment, interruption.</summary>
public sealed class Outside : IDisposable
{
    private readonly CancellationTokenSource interruption = new();

    public required Stream In { get; init; }
    public required TextWriter Out { get; init; }

    /// <summary>The standard output for what is not text: see <see cref="Put"/>.</summary>
    public Stream OutBytes { get; init; } = Stream.Null;
    public required TextWriter Error { get; init; }
    public bool OutIsTerminal { get; init; }
    public bool ErrorIsTerminal { get; init; }

    /// <summary>The working directory, absolute.</summary>
    public required string Directory { get; init; }
    public Func<string, string?> Variable { get; init; } = _ => null;
    public CancellationToken Interrupted => interruption.Token;

    public static Outside OfThisProcess()
    {
        if (OperatingSystem.IsWindows())
            Console.OutputEncoding = Encoding.UTF8;
        var output = Console.OpenStandardOutput();
        var outside = new Outside
        {
            In = Console.OpenStandardInput(),
            Out = Writer(output, autoFlush: false),
            OutBytes = output,
            Error = Writer(Console.OpenStandardError(), autoFlush: true),
            OutIsTerminal = !Console.IsOutputRedirected,
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Directory = Environment.CurrentDirectory,
            Variable = Environment.GetEnvironmentVariable,
        };
        Console.CancelKeyPress += outside.Interrupt;
        return outside;
    }

    /// <summary>Reads a file, or the standard input for "-".</summary>
    public Stream Open(string path) => path == "-" ? In : File.OpenRead(Absolute(path));

    /// <summary>Writes UTF-8 without a mark in front.</summary>
    public void Save(string path, string text) => File.WriteAllText(Absolute(path), text);

    public void Save(string path, byte[] bytes) => File.WriteAllBytes(Absolute(path), bytes);

    /// <summary>Onto the standard output, behind what was written there.</summary>
    public void Put(byte[] bytes)
    {
        Out.Flush();
        OutBytes.Write(bytes);
        OutBytes.Flush();
    }

    public string Absolute(string path) => Path.GetFullPath(path, Directory);

    public void Interrupt() => interruption.Cancel();

    public void Dispose()
    {
        Console.CancelKeyPress -= Interrupt;
        interruption.Dispose();
    }

    private static StreamWriter Writer(Stream stream, bool autoFlush) =>
        new(stream, new UTF8Encoding(false)) { NewLine = "\n", AutoFlush = autoFlush };

    /// <summary>The first asks for an end and gives two seconds for it, the second takes it.</summary>
    private void Interrupt(object? sender, ConsoleCancelEventArgs press)
    {
        if (interruption.IsCancellationRequested)
            return;
        press.Cancel = true;
        interruption.Cancel();
        _ = new Timer(End, null, 2000, Timeout.Infinite);
    }

    private void End(object? state)
    {
        Error.WriteLine("coldpath: interrupted; nothing is proved");
        Environment.Exit((int)Exit.Unfinished);
    }
}
