using System.Text;
using Coldpath.Cli;

namespace Coldpath.Tests.Cli;

/// <summary>One run of the command line in this process, in a directory of its own.</summary>
internal sealed record Ran(Exit Exit, string Out, string Error)
{
    /// <summary>What was put on the output that is not text.</summary>
    public byte[] Bytes { get; private init; } = [];

    public static Ran In(
        string directory,
        string[] arguments,
        string input = "",
        IReadOnlyDictionary<string, string>? environment = null,
        bool terminal = false,
        bool interrupted = false
    )
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var bytes = new MemoryStream();
        using var stdin = new MemoryStream(Encoding.UTF8.GetBytes(input));
        using var outside = new Outside
        {
            In = stdin,
            Out = output,
            OutBytes = bytes,
            Error = error,
            Directory = directory,
            OutIsTerminal = terminal,
            ErrorIsTerminal = terminal,
            Variable = name => environment?.GetValueOrDefault(name),
        };
        if (interrupted)
            outside.Interrupt();
        var exit = CommandLine.Run(arguments, outside);
        return new Ran(exit, output.ToString(), error.ToString()) { Bytes = bytes.ToArray() };
    }
}
