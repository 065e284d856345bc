using System.CommandLine;
using System.CommandLine.Invocation;

namespace Coldpath.Cli;

/// <summary>Prints the library's version, whatever program runs it.</summary>
internal sealed class PrintVersion : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parsed)
    {
        parsed.InvocationConfiguration.Output.WriteLine(Workbench.Version);
        return (int)Exit.Clean;
    }
}
