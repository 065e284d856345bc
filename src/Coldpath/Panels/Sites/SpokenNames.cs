using System.Text.RegularExpressions;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Sites;

/// <summary>Names with a slash in the wiring and the intents of a site: they may mean devices of its panels.</summary>
internal static partial class SpokenNames
{
    public static IEnumerable<string> In(PanelSyntax panel) =>
        from statement in panel.Statements
        where statement is ChainSyntax or WireSyntax or UntracedSyntax or IntentSyntax or WaiveSyntax
        from Match match in Name().Matches(statement.Span.Text)
        select match.Value;

    [GeneratedRegex(@"[^\s,:|()\[\]]+/[^\s,:|()\[\]]+")]
    private static partial Regex Name();
}
