namespace Coldpath.Notation;

/// <summary>
/// A stretch of a file's lexemes. The framework's own stretches would be compiled anew at every start of the program,
/// since what they hold is ours.
/// </summary>
internal readonly struct Lexemes(Lexeme[] file, int first, int count)
{
    public int Count => count;

    public ref Lexeme this[int i] => ref file[first + i];

    public Lexemes Slice(int start, int length) => new(file, first + start, length);

    public bool Any(Predicate<Lexeme> holds) => Find(holds) < count;

    /// <summary>Index of the first that is meant; the count when there is none.</summary>
    public int Find(Predicate<Lexeme> meant)
    {
        var i = 0;
        while (i < count && !meant(file[first + i]))
            i++;
        return i;
    }
}
