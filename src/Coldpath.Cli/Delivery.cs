using System.Text;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli;

/// <summary>Where results go: to the standard output as they come, or into a file at the end.</summary>
internal sealed class Delivery(Outside outside, string? file)
{
    private readonly StringBuilder kept = new();

    public void Put(Page page)
    {
        if (file is null)
            Terminal.Print(outside, page);
        else
            kept.Append(page);
    }

    public void Put(string text)
    {
        if (file is null)
            outside.Out.Write(text);
        else
            kept.Append(text);
    }

    public void Finish()
    {
        if (file is not null)
            Sources.Save(file, kept.ToString(), outside);
    }
}
