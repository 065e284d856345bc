using System.Text;
using System.Text.RegularExpressions;

namespace Coldpath.Trials;

/// <summary>Makes damaged texts of samples.</summary>
internal sealed partial class Damage
{
    private const string Alphabet = "aK1 \n\t->|,:=+-*/%()[]\"#.'_\r\0\u00E9\u202E\uD83D\uDE00";
    private readonly List<string> samples;
    private readonly Random random;
    private readonly List<string[]> tokens;
    private readonly string[] words;

    public Damage(List<string> samples, Random random)
    {
        (this.samples, this.random) = (samples, random);
        tokens = samples.Select(s => Token().Matches(s).Select(m => m.Value).ToArray()).ToList();
        words = tokens.SelectMany(t => t).Distinct().Order(StringComparer.Ordinal).ToArray();
    }

    /// <summary>Even inputs have tokens changed; odd ones characters, or are random.</summary>
    public string Next(int index) =>
        (index % 4) switch
        {
            0 or 2 => Tokens(),
            1 => Characters(),
            _ => random.Next(2) == 0 ? RandomWords() : RandomCharacters(),
        };

    private string Tokens()
    {
        var text = Stretch(tokens[random.Next(tokens.Count)]);
        for (var edits = random.Next(1, 4); edits > 0 && text.Count > 0; edits--)
            EditToken(text, random.Next(text.Count));
        return string.Concat(text);
    }

    private void EditToken(List<string> text, int at)
    {
        switch (random.Next(5))
        {
            case 0:
                text.RemoveAt(at);
                break;
            case 1:
                text.Insert(at, text[random.Next(text.Count)]);
                break;
            case 2:
                text[at] = Word();
                break;
            case 3:
                text.Insert(at, Word());
                break;
            default:
                var other = random.Next(text.Count);
                (text[at], text[other]) = (text[other], text[at]);
                break;
        }
    }

    /// <summary>Every other time the whole sample; else a stretch of it that begins with a row.</summary>
    private List<string> Stretch(string[] sample)
    {
        if (random.Next(2) == 0)
            return [.. sample];
        var first = random.Next(sample.Length);
        while (first > 0 && !sample[first - 1].EndsWith('\n'))
            first--;
        return sample.Skip(first).Take(random.Next(1, 200)).ToList();
    }

    private string Characters()
    {
        var text = new StringBuilder(string.Concat(Stretch(tokens[random.Next(tokens.Count)])));
        for (var edits = random.Next(1, 6); edits > 0 && text.Length > 0; edits--)
        {
            var at = random.Next(text.Length);
            if (random.Next(3) > 0)
                text.Remove(at, 1);
            if (random.Next(3) > 0)
                text.Insert(at, Alphabet[random.Next(Alphabet.Length)]);
        }
        return text.ToString();
    }

    private string RandomWords()
    {
        var text = new StringBuilder();
        for (var count = random.Next(1, 60); count > 0; count--)
            text.Append(Word()).Append(random.Next(8) == 0 ? "\n" : " ");
        return text.ToString();
    }

    private string RandomCharacters() =>
        new([
            .. Enumerable.Range(0, random.Next(1, 200)).Select(_ => Alphabet[random.Next(Alphabet.Length)]),
        ]);

    private string Word() => words[random.Next(words.Length)];

    [GeneratedRegex("""->|"[^"\n]*"|[\w.'/]+(-[\w.'/]+)*|[ \t]+|\r?\n|.""", RegexOptions.Singleline)]
    private static partial Regex Token();
}
