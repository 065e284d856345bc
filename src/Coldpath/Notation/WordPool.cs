namespace Coldpath.Notation;

/// <summary>One string for all equal words of a text.</summary>
internal sealed class WordPool
{
    private const int FirstSize = 256;
    private string?[] words = new string?[FirstSize];
    private int count;

    public string Get(ReadOnlySpan<char> text)
    {
        ref var slot = ref words[Slot(text)];
        if (slot is { } known)
            return known;
        var word = text.ToString();
        slot = word;
        if (++count * 2 > words.Length)
            Grow();
        return word;
    }

    /// <summary>Where the word lies, or the free place where it belongs.</summary>
    private int Slot(ReadOnlySpan<char> text)
    {
        var slot = string.GetHashCode(text) & (words.Length - 1);
        while (words[slot] is { } word && !text.SequenceEqual(word))
            slot = (slot + 1) & (words.Length - 1);
        return slot;
    }

    private void Grow()
    {
        var old = words;
        words = new string?[2 * old.Length];
        foreach (var word in old)
            if (word is not null)
                words[Slot(word)] = word;
    }
}
