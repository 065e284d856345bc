using Coldpath.Notation.Syntax;
using FluentAssertions;

namespace Coldpath.Tests.Notation;

/// <summary>What formatting must leave alone.</summary>
internal static class RoundTrip
{
    /// <summary>Formatting is idempotent, keeps the tree but for places, and keeps every comment in its order.</summary>
    public static void Check(string text)
    {
        var before = Read.All(text);
        before.Findings.Should().BeEmpty("of {0}", text);
        var formatted = Read.Format(text);
        var after = Read.All(formatted);
        after.Findings.Should().BeEmpty("of {0}", formatted);
        SyntaxText.Of(after.Panel).Should().Be(SyntaxText.Of(before.Panel));
        Comments(after.Panel).Should().Equal(Comments(before.Panel));
        Read.Format(formatted).Should().Be(formatted);
    }

    private static IEnumerable<string> Comments(PanelSyntax panel) => panel.Comments.Select(c => c.Text);
}
