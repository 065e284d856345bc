using System.CommandLine;
using System.CommandLine.Parsing;
using Coldpath.Sheets.Drawings;

namespace Coldpath.Cli.Commands;

/// <summary>What may be said about a drawing.</summary>
internal sealed class DrawOptions
{
    private static readonly string[] Formats = ["svg", "png", "pdf"];

    private readonly Option<string> output = new("--output", "-o")
    {
        Description = "write to this file, or - for the standard output",
        HelpName = "FILE",
        Required = true,
    };

    private readonly Option<string?> format = new("--format")
    {
        Description = "svg, png or pdf; the ending of the file when not given",
        HelpName = "svg|png|pdf",
    };

    private readonly Option<string> lines = new("--lines")
    {
        Description = "3: every conductor of the power circuit; 1: one line for those that run together",
        DefaultValueFactory = _ => "3",
        HelpName = "1|3",
    };

    private readonly Option<string> paper = new("--paper")
    {
        Description = "size of the sheets; unbounded makes one sheet as large as it needs to be",
        DefaultValueFactory = _ => "a3",
        HelpName = string.Join('|', Paper.All.Select(p => p.Name)),
    };

    private readonly Option<int?> sheet = new("--sheet")
    {
        Description = "only this sheet, counted from 1",
        HelpName = "N",
    };

    private readonly Option<string[]> set = StateOptions.Set();
    private readonly Option<string> from = StateOptions.From();

    private readonly Option<string?> finding = new("--finding")
    {
        Description = "mark what this finding of check is about",
        HelpName = "CODE|NAME",
    };

    private readonly Option<int> dpi = new("--dpi")
    {
        Description = "dots an inch of a png",
        DefaultValueFactory = _ => 150,
        HelpName = "N",
    };

    public DrawOptions()
    {
        format.AcceptOnlyFromAmong(Formats);
        lines.AcceptOnlyFromAmong("1", "3");
        paper.AcceptOnlyFromAmong([.. Paper.All.Select(p => p.Name)]);
        sheet.Validators.Add(r => Within(r, "--sheet", r.GetValueOrDefault<int?>(), 1, int.MaxValue));
        dpi.Validators.Add(r => Within(r, "--dpi", r.GetValueOrDefault<int>(), 20, 1200));
    }

    public void AddTo(Command command)
    {
        Option[] all = [output, format, lines, paper, sheet, set, from, finding, dpi];
        foreach (var option in all)
            command.Options.Add(option);
        command.Validators.Add(NeedFormat);
        command.Validators.Add(NeedOneView);
    }

    public DrawRequest Request(ParseResult parsed) =>
        new(
            parsed.GetRequiredValue(lines) == "1" ? 1 : 3,
            Paper.Find(parsed.GetRequiredValue(paper)) ?? Paper.Unbounded
        );

    /// <summary>Null for the wiring alone.</summary>
    public ShowRequest? Show(ParseResult parsed)
    {
        if (parsed.GetValue(finding) is { } name)
            return new ShowFinding(name);
        return ShowsState(parsed.CommandResult)
            ? new ShowState(StateOptions.Operations(parsed.GetValue(set)), parsed.GetValue(from) == "rest")
            : null;
    }

    public DrawingTarget Target(ParseResult parsed) =>
        new(
            parsed.GetRequiredValue(output),
            FormatOf(parsed.GetRequiredValue(output), parsed.GetValue(format))!,
            parsed.GetValue(sheet),
            parsed.GetRequiredValue(dpi)
        );

    /// <summary>Where a state begins may be the default; it is shown when it was said.</summary>
    private bool ShowsState(CommandResult result) => IsGiven(result, set) || IsGiven(result, from);

    private static bool IsGiven(CommandResult result, Option option) =>
        result.GetResult(option) is { Implicit: false };

    private void NeedFormat(CommandResult result)
    {
        var file = result.GetResult(output) is { Tokens: [var token, ..] } ? token.Value : null;
        if (file is not null && FormatOf(file, result.GetValue(format)) is null)
            result.AddError(
                $"{(file == "-" ? "the standard output" : file)} does not say the format: "
                    + "end the file in .svg, .png or .pdf, or add --format"
            );
    }

    private void NeedOneView(CommandResult result)
    {
        if (IsGiven(result, finding) && ShowsState(result))
            result.AddError("--finding and a state (--set, --from) are two drawings: ask for one of them");
    }

    private static string? FormatOf(string file, string? format) =>
        format ?? Formats.FirstOrDefault(f => file.EndsWith("." + f, StringComparison.OrdinalIgnoreCase));

    private static void Within(OptionResult result, string name, int? value, int least, int most)
    {
        if (value < least || value > most)
            result.AddError(
                most == int.MaxValue
                    ? $"{name} counts from {least}"
                    : $"{name} expects a number from {least} to {most}"
            );
    }
}
