using System.CommandLine;

namespace Coldpath.Cli.Commands;

/// <summary>completion: a script for a shell, which asks this program what may follow and else offers files.</summary>
internal static class CompletionCommand
{
    private const string Bash = """
        _coldpath() {
            local IFS=$'\n'
            local word="${COMP_WORDS[COMP_CWORD]}"
            COMPREPLY=($(compgen -W "$(coldpath "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)" -- "$word"))
            [ ${#COMPREPLY[@]} -gt 0 ] || COMPREPLY=($(compgen -f -- "$word"))
        }
        complete -o filenames -F _coldpath coldpath

        """;

    private const string Zsh = """
        #compdef coldpath
        _coldpath() {
            local -a found
            found=("${(@f)$(coldpath "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
            compadd -a found
            _files
        }
        compdef _coldpath coldpath

        """;

    private const string Fish = """
        complete -c coldpath -a '(coldpath "[suggest:"(commandline -C)"]" (commandline -cp) 2>/dev/null)'

        """;

    public static Command Build(Outside outside)
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh or fish" };
        shell.AcceptOnlyFromAmong("bash", "zsh", "fish");
        var command = new Command("completion", "Print a script that completes command lines in a shell.")
        {
            shell,
        };
        command.SetAction(parsed =>
        {
            outside.Out.Write(
                parsed.GetRequiredValue(shell) switch
                {
                    "bash" => Bash,
                    "zsh" => Zsh,
                    _ => Fish,
                }
            );
            return (int)Exit.Clean;
        });
        return command;
    }
}
