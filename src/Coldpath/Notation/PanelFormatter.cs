using Coldpath.Findings;
using Coldpath.Notation.Formatting;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation;

/// <summary>Writes a panel in its canonical layout. Words, their order and comments stay; spaces and rows change.</summary>
public static class PanelFormatter
{
    /// <summary>The text in canonical layout; unchanged when the panel is not whole.</summary>
    /// <param name="panel">What <see cref="PanelParser.Parse"/> made of <paramref name="source"/>.</param>
    /// <param name="contactNumbers">
    /// Terminals to write behind references that have none, such as "13-14", by the start of the reference's span.
    /// </param>
    public static string Format(
        PanelSyntax panel,
        SourceText source,
        IReadOnlyDictionary<int, string>? contactNumbers = null
    )
    {
        if (!panel.IsWhole)
            return source.Text;
        var reading = new Reading(source);
        var lexemes = new LexemeReader(reading, new Complaints()).Read();
        var lines = new LineCutter(reading, lexemes).Cut();
        var rewrites = Rewrites.Of(panel, contactNumbers ?? new Dictionary<int, string>());
        var rows = new RowWriter(reading, rewrites, LineNodes.Of(panel), panel.Comments).Write(lines);
        return Columns.Align(rows);
    }
}
