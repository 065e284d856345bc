using System.Globalization;

namespace Coldpath.Sheets.Drawings;

/// <summary>The widths that letter-widths.txt holds.</summary>
internal sealed class LetterTable
{
    private readonly Dictionary<int, double> regular = [];
    private readonly Dictionary<int, double> bold = [];

    /// <summary>In parts of the font size; null for a letter that is not in it.</summary>
    public double? Of(int letter, bool heavy) =>
        (heavy ? bold : regular).TryGetValue(letter, out var width) ? width : null;

    public static LetterTable Load()
    {
        var table = new LetterTable();
        using var stream = typeof(LetterTable).Assembly.GetManifestResourceStream("letter-widths.txt")!;
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
            if (!line.StartsWith('#'))
                table.Add(line.Split(' '));
        return table;
    }

    /// <param name="row">First code point, face, then widths in thousandths.</param>
    private void Add(string[] row)
    {
        var first = int.Parse(row[0], NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        var widths = row[1] == "bold" ? bold : regular;
        for (var i = 2; i < row.Length; i++)
            widths[first + i - 2] = int.Parse(row[i], CultureInfo.InvariantCulture) / 1000.0;
    }
}
