using System.Text;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>Text inside XML: made harmless, and escaped.</summary>
internal static class XmlText
{
    public static string Of(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in Harmless.Text(text))
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                _ => escaped.Append(c),
            };
        return escaped.ToString();
    }
}
