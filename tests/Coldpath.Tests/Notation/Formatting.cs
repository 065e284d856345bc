using Coldpath.Findings;
using Coldpath.Notation;

namespace Coldpath.Tests.Notation;

internal static class Formatting
{
    public static string Format(string text, IReadOnlyDictionary<int, string>? contactNumbers = null)
    {
        var source = new SourceText("test.panel", text);
        return PanelFormatter.Format(PanelParser.Parse(source).Panel, source, contactNumbers);
    }
}
