using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>What the panel is meant to do, to be proved or refuted.</summary>
/// <param name="Failures">The number in <c>even with N failures</c>; null when not said.</param>
public abstract record IntentSyntax(int? Failures, Span Span) : StatementSyntax(Span);

/// <summary><c>never K1 closed and S0 pressed, when settled</c>.</summary>
/// <param name="When">Which states are meant.</param>
public sealed record NeverSyntax(ConditionSyntax What, StatesMeant When, int? Failures, Span Span)
    : IntentSyntax(Failures, Span);

/// <summary>Which states an intent speaks of.</summary>
public enum StatesMeant
{
    /// <summary>All, passing ones too.</summary>
    Any,

    /// <summary>Those in which nothing more follows at once.</summary>
    Settled,

    /// <summary>Those in which no delay is running out either.</summary>
    Quiet,
}

/// <summary><c>dead M1 when Q2 open</c>.</summary>
public sealed record DeadSyntax(RefSyntax What, ConditionSyntax When, int? Failures, Span Span)
    : IntentSyntax(Failures, Span);

/// <summary><c>stops M1 by S1 at once</c>.</summary>
public sealed record StopsSyntax(RefSyntax What, RefSyntax By, bool AtOnce, int? Failures, Span Span)
    : IntentSyntax(Failures, Span);

/// <summary><c>can M1 run via K3</c>.</summary>
/// <param name="Via">The devices after <c>via</c>, joined by <c>and</c>; empty when there is no <c>via</c>.</param>
public sealed record CanSyntax(RefSyntax What, IReadOnlyList<RefSyntax> Via, int? Failures, Span Span)
    : IntentSyntax(Failures, Span);

/// <summary><c>waive way-without-overload on M1 because "…"</c>.</summary>
/// <param name="Check">The finding's name or code.</param>
/// <param name="On">The device or terminal, at least one.</param>
public sealed record WaiveSyntax(WordSyntax Check, IReadOnlyList<RefSyntax> On, TextSyntax Because, Span Span)
    : StatementSyntax(Span);
