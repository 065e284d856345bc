namespace Coldpath.Cli;

/// <summary>One line on a terminal's error stream that says what is being done; nothing anywhere else.</summary>
internal sealed class Progress(Outside outside, int steps)
{
    private int step;

    public void Say(string what)
    {
        step++;
        if (steps > 1 && outside.ErrorIsTerminal)
            outside.Error.Write($"\r\u001b[K{step}/{steps} {what}");
    }

    public void Clear()
    {
        if (steps > 1 && outside.ErrorIsTerminal)
            outside.Error.Write("\r\u001b[K");
    }
}
