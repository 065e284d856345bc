using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>
/// A panel as an SMT solver is told it: a state that it may choose, what conducts there, what may move, and a state
/// that one move leads to. Shares nothing with the engine but the netlist.
/// </summary>
internal sealed class SmtPanel
{
    private readonly SmtText text = new();
    private readonly Netlist netlist;
    private readonly SmtVariables now;
    private readonly SmtVariables next;
    private readonly SmtNetwork network;
    private readonly IReadOnlyList<SmtMove> moves;
    private readonly string canFail;

    /// <param name="netlist">The panel; see <see cref="CanBeTold"/>.</param>
    /// <param name="most">How many of its failures may have happened.</param>
    public SmtPanel(Netlist netlist, int most)
    {
        this.netlist = netlist;
        now = new(text, netlist, "now");
        next = new(text, netlist, "next");
        (network, moves) = SmtMoves.Of(text, new SmtGraph(text, netlist, now), now);
        canFail = text.Name(Not(AtLeastFailed(most)));
        Steady = text.Name(Not(Or(moves.Where(m => m.Urgent).Select(m => m.Certain))));
    }

    public SmtText Definitions => text;

    /// <summary>No certain urgent move is open.</summary>
    public string Steady { get; }

    /// <summary>Synchronised supplies meet: there the encoding does not say what is shorted.</summary>
    public string BeyondIt => network.Undecided;

    /// <summary>The state is one of these; so is the next one.</summary>
    public (string Now, string Next) Among(StateSpace space, Diagram states) =>
        (new SmtDiagrams(text, space, now).Of(states), new SmtDiagrams(text, space, next).Of(states));

    /// <summary>
    /// Whether the encoding covers it: two supplies at most that are no store, no diodes, nothing asked at grade loose;
    /// conductors of one supply all of different voltage.
    /// </summary>
    public static bool CanBeTold(Netlist netlist) =>
        netlist.Supplies.Count(s => s.Store is null) + netlist.Converters.Count <= 2
        && netlist.Elements.All(e => e.Type != ElementType.Diode)
        && Conditions(netlist).SelectMany(Parts).All(IsTold);

    /// <summary>Whether the question is one that the encoding answers of this panel.</summary>
    public static bool CanBeAsked(Netlist netlist, Expression question) =>
        Parts(question).All(IsTold)
        && (
            Parts(question).All(p => p is not Runs) || netlist.Elements.All(e => e.Type != ElementType.Series)
        );

    public string Of(Expression condition) => text.Name(network.Of(condition, now));

    /// <summary>These failures have happened, others perhaps too.</summary>
    public string Failed(IEnumerable<Variable> failures) => And(failures.Select(Happened));

    public string At(State state) => At(now, state);

    public string NextAt(State state) => At(next, state);

    /// <summary>Some move leads from the one state to the next.</summary>
    public string Moved => text.Name(Or(moves.Select(m => And(Made(m), Leads(m)))));

    /// <summary>Some certain urgent move leads from the one state to the next.</summary>
    public string Followed => text.Name(Or(moves.Where(m => m.Urgent).Select(m => And(m.Certain, Leads(m)))));

    /// <summary>This move can be made.</summary>
    public string CanMake(Transition transition) => Or(Like(transition).Select(Made));

    /// <summary>This move is certain.</summary>
    public string IsCertain(Transition transition) => Or(Like(transition).Select(m => m.Certain));

    private string At(SmtVariables variables, State state) =>
        text.Name(And(netlist.Variables.Select((v, i) => variables.Code(v.Name, state[i]))));

    private IEnumerable<SmtMove> Like(Transition transition) =>
        moves.Where(m =>
            m.Variable == netlist.Variables[transition.Variable]
            && m.From == m.Variable.Values[transition.From]
            && m.To == m.Variable.Values[transition.To]
            && m.Cause == transition.Cause
        );

    /// <summary>Urgent, open and welding moves come at once, all others when the circuit has settled.</summary>
    private string Made(SmtMove move)
    {
        var certain = move.Urgent || move.Welds ? move.Certain : And(move.Certain, Steady);
        return text.Name(And(Or(certain, move.Open), move.Cause == Cause.Failure ? canFail : "true"));
    }

    private string Leads(SmtMove move) =>
        text.Name(And(next.Is(move.Variable.Name, move.To), next.SameBut(now, move.Variable.Name)));

    private string Happened(Variable failure) => Not(now.Is(failure.Name, failure.Rest));

    private string AtLeastFailed(int count)
    {
        var failed = netlist.Variables.Where(v => v.Kind == VariableKind.Failure).Select(Happened);
        // counted[k]: at least k + 1 of those so far.
        var counted = Enumerable.Repeat("false", count).ToArray();
        foreach (var one in failed)
            for (var k = count - 1; k >= 0; k--)
                counted[k] = text.Name(Or(counted[k], And(one, k == 0 ? "true" : counted[k - 1])));
        return count == 0 ? "true" : counted[^1];
    }

    private static IEnumerable<Expression> Conditions(Netlist netlist) =>
        netlist
            .Variables.SelectMany(v => v.Moves)
            .SelectMany(m => new[] { m.When, m.May })
            .Concat(netlist.Converters.Select(c => c.When));

    private static bool IsTold(Expression part) =>
        part switch
        {
            Energised e => e.Grade == Grade.Solid,
            Fed or SinglePhased or InShort or Quiet => false,
            _ => true,
        };

    private static IEnumerable<Expression> Parts(Expression whole) =>
        whole switch
        {
            Not n => Parts(n.Term),
            All a => a.Terms.SelectMany(Parts),
            Any a => a.Terms.SelectMany(Parts),
            _ => [whole],
        };
}
