using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Tests.Cli;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>The comparisons of this folder at a glance: a few small panels, what the interpreter says of them stored.</summary>
public class AgainstStoredAnswersTests
{
    private const int Fewest = 32;
    private static readonly Lazy<StoredAnswers> Stored = new(() => new());

    public static TheoryData<int> Tables => [.. Enumerable.Range(800_000, 12)];
    public static TheoryData<int> Isolations => [.. Enumerable.Range(810_000, 12)];
    public static TheoryData<int> Intents => [.. Enumerable.Range(820_000, 16)];
    public static TheoryData<int> Failures => [.. Enumerable.Range(830_000, 12)];

    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Tables))]
    public void Engine_and_interpreter_agree(int number) => CompareTable(number, Stored.Value);

    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Isolations))]
    public void Isolating_sets_are_those_of_brute_force(int number) => CompareIsolation(number, Stored.Value);

    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Intents))]
    public void Intents_are_judged_alike(int number) => CompareIntents(number, Stored.Value);

    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Failures))]
    public void Failures_suffice_and_show_alike(int number) => CompareFailures(number, Stored.Value);

    /// <summary>With COLDPATH_EXPECT=write in the environment the file is written anew instead.</summary>
    [Fact]
    public void The_interpreter_still_says_so()
    {
        using var interpreter = new Interpreter();
        var keeper = new StoredAnswers.Keeper(interpreter);
        Ask(Tables, CompareTable);
        Ask(Isolations, CompareIsolation);
        Ask(Intents, CompareIntents);
        Ask(Failures, CompareFailures);
        if (Expected.IsWriting)
            File.WriteAllText(StoredAnswers.Path, keeper.Text);
        else
            (keeper.Text == File.ReadAllText(StoredAnswers.Path)).Should().BeTrue();

        void Ask(TheoryData<int> numbers, Action<int, IInterpreter> compare)
        {
            foreach (var row in (IEnumerable<object[]>)numbers)
                compare((int)row[0], keeper);
        }
    }

    private static void CompareTable(int number, IInterpreter interpreter)
    {
        var netlist = RandomPanels.Panel(number, Fewest);
        Comparison
            .Differences(new Behaviour(netlist, new DiagramTable()), interpreter.Ask("table", netlist))
            .Should()
            .BeEmpty();
    }

    private static void CompareIsolation(int number, IInterpreter interpreter)
    {
        var (mine, theirs) = IsolatingSetsAgainstInterpreterTests.Compared(number, Fewest, interpreter);
        mine.Should().BeEquivalentTo(theirs);
    }

    private static void CompareIntents(int number, IInterpreter interpreter) =>
        IntentsAgainstInterpreterTests.Compared(number, Fewest, interpreter).Should().NotBeEmpty();

    private static void CompareFailures(int number, IInterpreter interpreter) =>
        FailuresAgainstInterpreterTests.Compared(number, Fewest, interpreter).Should().NotBeEmpty();
}
