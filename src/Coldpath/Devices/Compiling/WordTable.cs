namespace Coldpath.Devices.Compiling;

/// <summary>
/// The few words that a place in a kind's text allows, with what each stands for. Kept apart from dictionaries, whose
/// code over values would be compiled anew at every start.
/// </summary>
internal sealed class WordTable<T>(params WordEntry<T>[] entries)
{
    public IReadOnlyList<string> Words => [.. entries.Select(e => e.Word)];

    public WordEntry<T> First => entries[0];

    public WordEntry<T>? Find(string word)
    {
        foreach (var entry in entries)
            if (entry.Word == word)
                return entry;
        return null;
    }
}

internal sealed record WordEntry<T>(string Word, T Value);
