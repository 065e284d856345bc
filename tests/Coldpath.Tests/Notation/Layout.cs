using System.Text;

namespace Coldpath.Tests.Notation;

/// <summary>Lays lines out at random: spaces, rows and comments wherever they change nothing.</summary>
internal static class Layout
{
    private static readonly string[] Ends =
    [
        "\n",
        "\n",
        "\n\n",
        "\n\n\n",
        "\r\n",
        " # a -> b\n",
        "\t#\n",
        "\n# own row\n",
        "\n  # in\n\n",
    ];

    /// <param name="lines">Lines in which two spaces or " , " stand only where space may vary.</param>
    public static string Spread(IEnumerable<string> lines, Random random)
    {
        var text = new StringBuilder(random.Next(4) == 0 ? "\n# top\n" : "");
        foreach (var line in lines)
        {
            text.Append(' ', random.Next(3));
            Line(text, line, random);
            text.Append(Ends[random.Next(Ends.Length)]);
        }
        return text.ToString();
    }

    /// <summary>Between words of a line; a row may end behind a sign that a line cannot end with.</summary>
    private static void Line(StringBuilder text, string line, Random random)
    {
        var words = Words(line);
        for (var i = 0; i < words.Count; i++)
        {
            var goesOn = i > 0 && words[i - 1] is "->" or "|" or ",";
            if (i > 0)
                text.Append(goesOn && random.Next(8) == 0 ? Break(random) : Space(random));
            text.Append(words[i]);
        }
    }

    private static string Space(Random random) => random.Next(6) == 0 ? " \t " : " ";

    private static string Break(Random random) =>
        random.Next(3) == 0 ? "  # broken\n    # here\n  " : "\n      ";

    /// <summary>Words at single spaces outside texts.</summary>
    private static List<string> Words(string line)
    {
        var words = new List<string>();
        var parts = line.Split('"');
        for (var i = 0; i < parts.Length; i++)
            if (i % 2 == 1)
                words.Add($"\"{parts[i]}\"");
            else
                words.AddRange(parts[i].Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return words;
    }
}
