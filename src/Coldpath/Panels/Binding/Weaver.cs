using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>A chain resolved: what it joins, and whether it had better wait for more conductors to be known.</summary>
internal sealed record Woven(
    Chain Chain,
    IReadOnlyList<(Pin A, Pin B)> Joins,
    IReadOnlyList<ConductorUse> Uses,
    IReadOnlyList<Finding> Findings,
    bool Waits
);

/// <summary>Resolves one chain, conductor by conductor, from its beginning to its end. Changes nothing.</summary>
internal sealed class Weaver
{
    private readonly RefReader reader;
    private readonly Meetings meetings;
    private readonly List<(Pin, Pin)> joins = [];
    private readonly List<Finding> findings = [];

    private Weaver(RefReader reader, Meetings meetings) => (this.reader, this.meetings) = (reader, meetings);

    public static Woven Weave(
        ChainSyntax chain,
        RefReader reader,
        ContactBook contacts,
        TerminalBook terminals,
        ConductorNames conductors
    )
    {
        var meetings = new Meetings(contacts, terminals, conductors, inRung: chain.Rung is not null);
        var weaver = new Weaver(reader, meetings);
        var (_, root) = weaver.Row(chain.Steps, null, true, true, chain.Span);
        weaver.ReportPassedTwice(root);
        return new Woven(
            new Chain(chain.Rung?.Text, root, chain.Span),
            weaver.joins,
            meetings.Uses,
            [.. meetings.Findings, .. weaver.findings],
            meetings.Waits
        );
    }

    private (Port? Leaving, ChainPiece Piece) Row(
        IReadOnlyList<StepSyntax> steps,
        Port? arriving,
        bool begins,
        bool ends,
        Span span
    )
    {
        var pieces = new List<ChainPiece>();
        for (var i = 0; i < steps.Count; i++)
        {
            var role = References.RoleOf(i, steps.Count, begins, ends);
            var (leaving, piece) = Step(steps[i], role, arriving);
            arriving = leaving;
            if (piece is not null)
                pieces.Add(piece);
        }
        return (arriving, pieces.Count == 1 ? pieces[0] : new InSeries(pieces, span));
    }

    private (Port? Leaving, ChainPiece? Piece) Step(StepSyntax step, Role role, Port? arriving) =>
        step switch
        {
            GroupSyntax group => Group(group, role, arriving),
            RefSyntax reference => Name(reference, role, arriving),
            _ => (null, null),
        };

    private (Port?, ChainPiece?) Name(RefSyntax reference, Role role, Port? arriving)
    {
        var meeting = meetings.Meet(reader.Read(reference), role, arriving);
        var fits = meeting?.Left is null || arriving is null || Join(arriving, meeting.Left);
        // What comes after a mismatch would only repeat it.
        return (fits ? meeting?.Right : null, meeting?.Piece);
    }

    private (Port?, ChainPiece?) Group(GroupSyntax group, Role role, Port? arriving)
    {
        Port? together = null;
        var pieces = new List<ChainPiece>();
        foreach (var branch in group.Branches)
        {
            var (leaving, piece) = Row(
                branch.Steps,
                arriving,
                role == Role.Begins,
                role == Role.Ends,
                branch.Span
            );
            pieces.Add(piece);
            if (together is not null && leaving is not null)
                Join(together, leaving);
            // The earth joins nothing: what comes behind is joined to the other branches, whichever comes first.
            together = together is { IsEarth: false } ? together : leaving ?? together;
        }
        return (together, pieces.Count == 1 ? pieces[0] : new InParallel(pieces, group.Span));
    }

    /// <summary>False, with a finding, when the widths differ.</summary>
    private bool Join(Port from, Port to)
    {
        if (from.Width != to.Width)
        {
            findings.Add(WidthsDiffer(from, to));
            return false;
        }
        for (var i = 0; i < from.Width; i++)
            joins.Add((from.Pins[i], to.Pins[i]));
        return true;
    }

    private static Finding WidthsDiffer(Port from, Port to)
    {
        var message = $"{from.Of} brings {from.Described}, but {to.Of} takes {to.Described}";
        var wider = from.Width > to.Width ? from : to;
        var remedy = $"name the conductors of {wider.Of} that are meant in brackets";
        return Complaint.WidthsDiffer.At(
            to.Span,
            message,
            to.Pins[0].Device ?? from.Pins[0].Device,
            remedy
        ) with
        {
            Related = [new Label(from.Span, from.Described)],
        };
    }

    private void ReportPassedTwice(ChainPiece root)
    {
        var passed = new Dictionary<(string, string, string), Span>();
        foreach (var passage in Chain.PassagesIn(root).Where(p => p.IsThrough))
        foreach (var (left, right) in passage.Poles)
            if (!passed.TryAdd((passage.Device, left, right), passage.Span))
            {
                findings.Add(PassedTwice(passage, left, right, passed[(passage.Device, left, right)]));
                break;
            }
    }

    private static Finding PassedTwice(Passage passage, string left, string right, Span first)
    {
        var message = $"{passage.Device}:{left}-{right} is passed twice in one chain";
        return Complaint.PassedTwice.At(passage.Span, message, passage.Device) with
        {
            Related = [new Label(first, "first passed here")],
        };
    }
}
