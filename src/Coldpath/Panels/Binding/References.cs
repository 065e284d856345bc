using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>Where in its chain a name stands.</summary>
internal enum Role
{
    /// <summary>It stands for its load side.</summary>
    Begins,

    /// <summary>It is passed through.</summary>
    Passes,

    /// <summary>It stands for its line side.</summary>
    Ends,

    /// <summary>Only its terminals are spoken of, as in a wire.</summary>
    Touched,
}

/// <summary>Walks the names in chains and wires, in the order of the text.</summary>
internal static class References
{
    public static IEnumerable<(RefSyntax Syntax, Role Role)> In(StatementSyntax statement) =>
        statement switch
        {
            ChainSyntax chain => In(chain.Steps, true, true),
            WireSyntax wire => wire.Ends.Select(e => (e, Role.Touched)),
            UntracedSyntax untraced => untraced.What.Select(w => (w, Role.Touched)),
            _ => [],
        };

    /// <summary>The role of a step, in a row that may begin or end its chain.</summary>
    public static Role RoleOf(int at, int count, bool begins, bool ends) =>
        begins && at == 0 ? Role.Begins
        : ends && at == count - 1 ? Role.Ends
        : Role.Passes;

    private static IEnumerable<(RefSyntax, Role)> In(IReadOnlyList<StepSyntax> steps, bool begins, bool ends)
    {
        for (var i = 0; i < steps.Count; i++)
        {
            var role = RoleOf(i, steps.Count, begins, ends);
            if (steps[i] is RefSyntax reference)
                yield return (reference, role);
            if (steps[i] is GroupSyntax group)
                foreach (var branch in group.Branches)
                foreach (var inside in In(branch.Steps, role == Role.Begins, role == Role.Ends))
                    yield return inside;
        }
    }
}
