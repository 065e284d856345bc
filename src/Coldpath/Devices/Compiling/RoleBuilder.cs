using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>What the device is for: isolating, protecting, stopping, and rules over other devices.</summary>
internal sealed class RoleBuilder(KindContext context)
{
    private const string Lockable = "lockable";
    private const string VisibleBreak = "visible break";

    /// <summary>In the place of a variable: what isolates is taken out by hand, as fuse links are.</summary>
    private const string Removal = "removal";

    private static readonly WordTable<ControlUse> Uses = new(
        new("none", ControlUse.None),
        new("stop", ControlUse.Stop),
        new("start", ControlUse.Start),
        new("mode", ControlUse.Mode)
    );

    private static readonly string[] ConstraintSorts = ["mechanical", "key", "mirror"];
    private static readonly string[] PairSorts = ["reversing", "speed", "change-over"];
    private static readonly string[] Hazards = ["overload", "phase loss", "earth fault"];

    private readonly List<Protection> protects = [];
    private readonly List<ShortOpening> openings = [];
    private readonly List<Constraint> constraints = [];
    private readonly List<LinkRule> links = [];
    private readonly List<KeyValuePair<string, Expression>> states = [];
    private Isolation? isolation;

    public ControlUse Use { get; private set; }

    /// <summary>A stop that must stop everything, whatever feeds it.</summary>
    public bool Emergency { get; private set; }
    public IReadOnlyList<Constraint> Constraints => constraints;
    public IReadOnlyList<LinkRule> Links => links;
    public IReadOnlyList<KeyValuePair<string, Expression>> States => states;

    public void Add(PlacedLine placed)
    {
        switch (placed.Line)
        {
            case UseSyntax line:
                Use = UseOf(line);
                break;
            case IsolatesSyntax line:
                isolation = IsolationOf(line);
                break;
            case ProtectsSyntax line:
                AddProtection(line);
                break;
            case OpensOnShortSyntax line:
                AddOpening(line, placed.Pole);
                break;
            case ConstraintSyntax line:
                AddConstraint(line);
                break;
            case DevicePairSyntax line:
                links.Add(new LinkRule(Sort(line.Sort, "sort of pair", PairSorts), Devices(line.Of), null));
                break;
            case KindStateSyntax line:
                AddState(
                    string.Join(' ', line.Name),
                    context.Conditions.Of(line.When, placed.Pole, ConditionUse.State)
                );
                break;
            case PositionsSyntax line:
                foreach (var position in PositionValues.Positions(line, context))
                    AddState($"at {position}", new VariableIs(context.Variables[placed].Local, position));
                break;
        }
    }

    public NetlistDevice Device(string kind) =>
        new()
        {
            Tag = "",
            Kind = kind,
            Use = Use,
            Emergency = Emergency,
            Protects = protects,
            Isolates = isolation,
            OpensOnShort = openings,
            Ratings = Printed(),
        };

    private List<KeyValuePair<string, string>> Printed()
    {
        var printed = new List<KeyValuePair<string, string>>();
        foreach (var rating in context.Ratings.InOrder)
            printed.Add(KeyValuePair.Create(rating.Name, rating.Text));
        return printed;
    }

    private void AddState(string name, Expression when) => states.Add(KeyValuePair.Create(name, when));

    private ControlUse UseOf(UseSyntax line)
    {
        if (line.Use is { Text: "emergency" })
        {
            Emergency = true;
            return ControlUse.Stop;
        }
        if (line.Use is { } word)
            return context.Word(word, "use of a control", Uses);
        var name = string.Join(' ', line.From);
        if (context.Ratings[name]?.Text is { } said && Uses.Find(said) is { } use)
            return use.Value;
        context.Findings.Unknown(line.Span, "rating that says a use", name, context.Ratings.Forms.Names);
        return ControlUse.None;
    }

    private Isolation IsolationOf(IsolatesSyntax line)
    {
        var lockable = context.Holds(line.Lockable, Lockable);
        return new Isolation(
            line.By.Text == Removal ? null : context.Variable(line.By, null),
            context.ElementIds(line.Through, null),
            lockable,
            context.Holds(line.Visible, VisibleBreak),
            line.Rank ?? (lockable ? 1 : 2)
        );
    }

    private void AddProtection(ProtectsSyntax line)
    {
        var against = string.Join(' ', line.Against);
        if (!Hazards.Contains(against))
            context.Findings.UnknownWord(line.Against[0].Span, "thing to protect against", against, Hazards);
        if (context.Variable(line.By, null) is { } variable)
            protects.Add(new Protection(against, Through(line.Through), variable));
    }

    /// <summary>Own elements, or "@" and the tags of the devices whose elements are meant.</summary>
    private IReadOnlyList<string> Through(IReadOnlyList<WordSyntax> words)
    {
        var name = string.Join(' ', words);
        return
            context.Names.Elements(name).Count == 0
            && context.Ratings.Forms.Find(name) is { Form: PlainFormSyntax { Form: PlainForm.Devices } }
            ? [.. Devices(words).Select(t => $"@{t}")]
            : context.ElementIds(words, null);
    }

    private void AddOpening(OpensOnShortSyntax line, Pole? pole)
    {
        if (context.Variable(line.Variable, pole) is not { } variable)
            return;
        var values = context.Names.Variables(line.Variable.Text)[0].Values;
        if (!values.Contains(line.Becomes.Text))
            context.Findings.UnknownWord(
                line.Becomes.Span,
                $"value of {line.Variable}",
                line.Becomes.Text,
                values
            );
        var amperes = line.Breaks is null ? null : context.Arithmetic.Of(line.Breaks);
        openings.Add(
            new ShortOpening(
                variable,
                line.Becomes.Text,
                context.ElementIds(line.Through, pole),
                amperes / 1000
            )
        );
    }

    private void AddConstraint(ConstraintSyntax line)
    {
        var sort = Sort(line.Sort, "sort of constraint", ConstraintSorts);
        if (line.Holds is AtMostOneSyntax most)
            links.Add(new LinkRule(sort, Devices(most.Of), string.Join(' ', most.State)));
        else
            constraints.Add(
                new Constraint(
                    string.Join(' ', line.Name),
                    sort,
                    context.Conditions.Of(line.Holds, null, ConditionUse.Guard)
                )
            );
    }

    private IReadOnlyList<string> Devices(IReadOnlyList<WordSyntax> words)
    {
        var name = string.Join(' ', words);
        if (context.Ratings.Forms.Find(name) is not { Form: PlainFormSyntax { Form: PlainForm.Devices } })
            context.Findings.Unknown(
                words[0].Span,
                "rating that names devices",
                name,
                context.Ratings.Forms.Names
            );
        return context.Ratings[name]?.Words ?? [];
    }

    private string Sort(WordSyntax word, string what, string[] known)
    {
        if (!known.Contains(word.Text))
            context.Findings.UnknownWord(word.Span, what, word.Text, known);
        return word.Text;
    }
}
