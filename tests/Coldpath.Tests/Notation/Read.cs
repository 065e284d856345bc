using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;

namespace Coldpath.Tests.Notation;

/// <summary>Short ways to read a text in a test.</summary>
internal static class Read
{
    public static ParseResult All(string text) => PanelParser.Parse(new SourceText("test.panel", text));

    public static PanelSyntax Panel(string text) => All(text).Panel;

    public static IEnumerable<string> Codes(string text) => All(text).Findings.Select(f => f.Code);

    /// <summary>The one statement of a text that has no mistakes.</summary>
    public static T One<T>(string text)
        where T : StatementSyntax
    {
        var result = All(text);
        return result.Findings.Count == 0
            ? (T)result.Panel.Statements.Single()
            : throw new ArgumentException(result.Findings[0].Message, nameof(text));
    }

    /// <summary>The lines of a kind with this body.</summary>
    public static IReadOnlyList<KindLineSyntax> Lines(string body) =>
        One<KindSyntax>($"kind k\n{body}\nend\n").Lines;

    public static string Format(string text, IReadOnlyDictionary<int, string>? contactNumbers = null)
    {
        var source = new SourceText("test.panel", text);
        return PanelFormatter.Format(PanelParser.Parse(source).Panel, source, contactNumbers);
    }
}
