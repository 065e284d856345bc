using System.Collections;
using System.Globalization;
using System.Text;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Tests.Notation;

/// <summary>A syntax tree as text without places, so that two trees can be compared.</summary>
internal static class SyntaxText
{
    public static string Of(PanelSyntax panel)
    {
        var text = new StringBuilder();
        foreach (var statement in panel.Statements)
            Write(text.Append('\n'), statement);
        return text.ToString();
    }

    private static void Write(StringBuilder text, object? value)
    {
        switch (value)
        {
            case null:
                text.Append('-');
                break;
            case string word:
                text.Append('"').Append(word).Append('"');
                break;
            case IEnumerable items:
                text.Append('[');
                foreach (var item in items)
                    Write(text.Append(' '), item);
                text.Append(']');
                break;
            case SyntaxNode or SupplyOptionsSyntax:
                text.Append(value.GetType().Name).Append('(');
                foreach (var property in value.GetType().GetProperties())
                    if (property.PropertyType != typeof(Span) && property.CanWrite)
                        Write(text.Append(' '), property.GetValue(value));
                text.Append(')');
                break;
            default:
                text.Append(Convert.ToString(value, CultureInfo.InvariantCulture));
                break;
        }
    }
}
