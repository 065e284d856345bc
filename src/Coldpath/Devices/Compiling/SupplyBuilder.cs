using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>Sources, converters and couplings.</summary>
internal sealed class SupplyBuilder(KindContext context)
{
    /// <summary>Properties of a supply that the kind may let the declaration decide.</summary>
    private const string Limited = "limited";
    private const string ExtraLow = "extra low";

    /// <summary>A rating or derived number of this name is a converter's.</summary>
    private const string Ratio = "ratio";
    private const string Unnamed = "supply";

    private static readonly WordTable<ConverterType> Types = new(
        new("transformer", ConverterType.Transformer),
        new("rectifier", ConverterType.Rectifier),
        new("drive", ConverterType.Drive),
        new("ups", ConverterType.Ups)
    );

    private readonly List<Supply> supplies = [];
    private readonly List<Converter> converters = [];
    private readonly List<Coupling> couplings = [];

    public IReadOnlyList<Supply> Supplies => supplies;
    public IReadOnlyList<Converter> Converters => converters;
    public IReadOnlyList<Coupling> Couplings => couplings;

    public void Add(PlacedLine placed)
    {
        switch (placed.Line)
        {
            case SourceSyntax line:
                supplies.Add(Supply(line.Name, line.Options, Lines(line.Lines)));
                break;
            case ConverterSyntax line:
                converters.Add(Converter(line));
                break;
            case CouplingSyntax line:
                couplings.Add(
                    new Coupling(
                        couplings.Count == 0 ? "coupling" : $"coupling{couplings.Count + 1}",
                        [.. line.Windings.Select(w => context.Nets.Of(w, null))],
                        line.FromFirst
                    )
                );
                break;
        }
    }

    /// <summary>Process variables that decide whether a supply or a conductor of it is there.</summary>
    public IReadOnlySet<string> Presences() =>
        supplies
            .SelectMany(s => s.Conductors.Select(c => c.Present).Prepend(s.Present))
            .SelectMany(VariablesIn)
            .ToHashSet();

    private List<KindLineSyntax> Lines(IEnumerable<KindLineSyntax> lines) =>
        [.. context.Unfolding.Of(lines, null).Select(l => l.Line)];

    private Converter Converter(ConverterSyntax line)
    {
        var lines = Lines(line.Lines);
        var when = context.Conditions.Of(line.When, null, ConditionUse.Move);
        if (NegatesNetwork(when))
            context.Findings.NegatesTheNetwork(line.When!.Span);
        return new Converter
        {
            Name = line.Name?.Text ?? Unnamed,
            Type = context.Word(line.Type, "type of converter", Types),
            Inputs = context.Nets.Of(line.From, null),
            Windings = [.. lines.OfType<WindingSyntax>().Select(w => context.Nets.Of(w.Terminals, null))],
            When = when,
            Ratio = context.Ratings[Ratio]?.Value ?? 1,
            Output = Supply(line.Name, line.Options, lines),
        };
    }

    private Supply Supply(WordSyntax? name, SupplyOptionsSyntax options, List<KindLineSyntax> lines)
    {
        var local = name?.Text ?? Unnamed;
        return new Supply
        {
            Name = local,
            Direct = options.Dc,
            Present = context.Conditions.Of(options.PresentWhen, null, ConditionUse.Guard),
            Group = Group(options) ?? local,
            ExtraLow = context.Holds(options.ExtraLow, ExtraLow),
            Limited = context.Holds(options.Limited, Limited),
            Store = Store(options),
            Conductors = [.. lines.OfType<SupplyConductorSyntax>().Select(Conductor)],
        };
    }

    /// <summary>The first device that a rating of that name gives, else the words themselves.</summary>
    private string? Group(SupplyOptionsSyntax options)
    {
        if (options.Group.Count == 0)
            return null;
        var name = string.Join(' ', options.Group);
        return context.Ratings.Forms.Find(name) is null ? name : context.Ratings[name]?.Words?[0];
    }

    private Store? Store(SupplyOptionsSyntax options)
    {
        if (options.StoredBy is not { } by || context.Variable(by, null) is not { } variable)
            return null;
        return new Store(variable, options.Discharge is { } time ? context.Arithmetic.Printed(time) : null);
    }

    private SupplyConductor Conductor(SupplyConductorSyntax line)
    {
        var net = context.Nets.Of(line.Terminal, null);
        return new SupplyConductor(
            net.TrimStart('*'),
            net,
            context.Arithmetic.Needed(line.At),
            line.Angle is null ? 0 : context.Arithmetic.Needed(line.Angle),
            line.Polarity switch
            {
                SupplyPolarity.Plus => Polarity.Plus,
                SupplyPolarity.Minus => Polarity.Minus,
                _ => Polarity.Alternating,
            },
            context.Conditions.Of(line.PresentWhen, null, ConditionUse.Guard)
        );
    }

    private static IEnumerable<string> VariablesIn(Expression expression) =>
        expression switch
        {
            VariableIs v => [v.Variable],
            Not not => VariablesIn(not.Term),
            All all => all.Terms.SelectMany(VariablesIn),
            Any any => any.Terms.SelectMany(VariablesIn),
            _ => [],
        };

    private static bool NegatesNetwork(Expression expression) =>
        expression switch
        {
            Not { Term: not VariableIs } => true,
            All all => all.Terms.Any(NegatesNetwork),
            Any any => any.Terms.Any(NegatesNetwork),
            _ => false,
        };
}
