using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>All lines of a kind, those inside blocks too.</summary>
internal sealed class KindLines
{
    private readonly List<KindLineSyntax> everywhere;
    private readonly List<KindLineSyntax> inBlocks;

    /// <param name="top">Its lines with borrowed ones in their places.</param>
    public KindLines(IReadOnlyList<KindLineSyntax> top)
    {
        Top = top;
        inBlocks = [.. top.SelectMany(Inside)];
        everywhere = [.. top, .. inBlocks];
    }

    public IReadOnlyList<KindLineSyntax> Top { get; }

    /// <summary>A line could not be read.</summary>
    public bool IsBroken => everywhere.Exists(l => l is BrokenLineSyntax);

    /// <summary>What a kind is and takes is said at its top alone.</summary>
    public IEnumerable<KindLineSyntax> Misplaced =>
        inBlocks.Where(l =>
            l is TakesSyntax or FlagSyntax or LikeSyntax or MeansSyntax or LetterSyntax or SymbolSyntax
        );

    /// <summary>Names of the variables and failures that it may declare.</summary>
    public IReadOnlySet<string> Moving() => everywhere.Select(Declared).OfType<string>().ToHashSet();

    private static string? Declared(KindLineSyntax line) =>
        line switch
        {
            VariableSyntax variable => variable.Name.Text,
            PositionsSyntax positions => positions.Variable.Text,
            CoilSyntax coil => coil.Moves.Text,
            FailureSyntax failure => failure.Name.Text,
            _ => null,
        };

    private static IEnumerable<KindLineSyntax> Inside(KindLineSyntax line)
    {
        IReadOnlyList<KindLineSyntax> inner = line switch
        {
            IfSyntax choice => [.. choice.Then, .. choice.Else],
            ForEachPoleSyntax each => each.Lines,
            SourceSyntax source => source.Lines,
            ConverterSyntax converter => converter.Lines,
            _ => [],
        };
        return inner.Concat(inner.SelectMany(Inside));
    }
}
