namespace Coldpath.Wiring;

/// <summary>Questions about conditions as text.</summary>
public static class Guards
{
    /// <summary>The variables that a condition names, in order of first mention, repeated ones repeated.</summary>
    public static IEnumerable<string> Variables(Expression condition) =>
        condition switch
        {
            VariableIs v => [v.Variable],
            Not n => Variables(n.Term),
            All a => a.Terms.SelectMany(Variables),
            Any a => a.Terms.SelectMany(Variables),
            _ => [],
        };

    /// <summary>The same, and the nets of every question about the network.</summary>
    public static IEnumerable<string> AllNames(Expression condition) =>
        condition switch
        {
            Not n => AllNames(n.Term),
            All a => a.Terms.SelectMany(AllNames),
            Any a => a.Terms.SelectMany(AllNames),
            Energised e => [e.A, e.B],
            Fed f => [f.A, f.B, f.C],
            SinglePhased s => [s.A, s.B, s.C],
            Joined j => [j.A, j.B],
            _ => Names(condition),
        };

    /// <summary>Variables, elements, loads, nets and supplies that a condition names.</summary>
    public static IEnumerable<string> Names(Expression condition) =>
        condition switch
        {
            VariableIs v => [v.Variable],
            Not n => Names(n.Term),
            All a => a.Terms.SelectMany(Names),
            Any a => a.Terms.SelectMany(Names),
            Closed c => [c.Element],
            Carries c => [c.Element],
            Runs r => [r.Load],
            Live l => [l.Net],
            InShort s => [s.Supply],
            _ => [],
        };

    /// <summary>The nets that a condition asks about, in order of first mention, repeated ones repeated.</summary>
    public static IEnumerable<string> Nets(Expression condition) =>
        condition switch
        {
            Not n => Nets(n.Term),
            All a => a.Terms.SelectMany(Nets),
            Any a => a.Terms.SelectMany(Nets),
            Energised e => [e.A, e.B],
            Fed f => [f.A, f.B, f.C],
            SinglePhased s => [s.A, s.B, s.C],
            Joined j => [j.A, j.B],
            Live l => [l.Net],
            _ => [],
        };
}
