using System.CommandLine;

namespace Coldpath.Cli.Commands;

/// <summary>fmt: write descriptions in the canonical layout, or only say which are not.</summary>
internal sealed class FmtCommand(Outside outside, bool checkOnly)
{
    public static Command Build(Outside outside)
    {
        var files = Arguments.Files(
            ".panel files or directories, changed in place; - writes to the standard output"
        );
        var check = new Option<bool>("--check")
        {
            Description = "change nothing, list what is not in layout",
        };
        var command = new Command("fmt", "Write panels in the canonical layout.") { files, check };
        command.SetAction(parsed =>
            (int)new FmtCommand(outside, parsed.GetValue(check)).Run(parsed.GetRequiredValue(files))
        );
        return command;
    }

    private Exit Run(string[] paths) => Sources.Find(paths, outside).Max(Format);

    private Exit Format(string path)
    {
        var source = Sources.Read(path, outside);
        var formatted = Workbench.Format(source);
        if (formatted.Answer is not { } text)
            return Reply.Refuse(outside, formatted);
        var same = text == source.Text;
        if (checkOnly)
        {
            if (!same)
                outside.Out.WriteLine(source.Name);
            return same ? Exit.Clean : Exit.Findings;
        }
        if (path == "-")
            outside.Out.Write(text);
        else if (!same)
            Sources.Save(path, text, outside);
        return Exit.Clean;
    }
}
