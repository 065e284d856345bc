using System.Numerics;
using Coldpath.Answers;
using Coldpath.Findings;
using Coldpath.Inspection;

namespace Coldpath.Tests.Sheets;

/// <summary>Answers with every field filled, over a made-up panel.</summary>
internal static class Specimens
{
    public static readonly SourceText Source = new(
        "panels/line 2/pump.panel",
        """
        panel "Pump 2"
          rules   NEC

        disconnect Q1 200 A, lockable, visible break, in "incoming"
        contactor  K2 and K3 140 A AC-3, coil 120 V
        MAINS -> Q1 -> ( K2 | K3 -> M1[W, V, U] )
        waive section-without-isolator on Q1 because "cord and plug: \"seen\""
        """
    );

    public static readonly Card Card = new()
    {
        Code = "S012",
        Name = "short-in-change-over",
        Family = Family.EnergisedPaths,
        Severity = Severity.Danger,
        Title = "Two contactors short phases while both conduct.",
        Why = "While both conduct, two phases are bolted together. The arc can open the door.",
        Reference = "common practice",
        Remedy = "give each contactor the other's NC contact ahead of its coil",
        Limits = "coils of doubtful voltage are not decided",
        Example = new("direct-on-line", "rung 1", "rung 2"),
    };

    public static Span At(string text, int skip = 0)
    {
        var start = Source.Text.IndexOf(text, skip, StringComparison.Ordinal);
        return new Span(Source, start, start + text.Length);
    }

    public static Finding Short { get; } =
        new()
        {
            Code = "S012",
            Name = "short-in-change-over",
            Severity = Severity.Danger,
            Message = "K2 and K3 short L1 and L3 while both conduct",
            Location = At("K3"),
            Devices = ["K2", "K3"],
            Points = ["M1:U"],
            Related = [new Label(At("M1[W, V, U]"), "crosses the phases")],
            Story =
            [
                new StoryStep("operate Q1", "Q1", "closed", "operator"),
                new StoryStep("K3 pulls in", "K3", "in", "settle"),
                new StoryStep("L1 and L3 are joined"),
            ],
            Path = ["MAINS:L1", "Q1", "K3", "K2", "Q1", "MAINS:L3"],
            Reference = "common practice",
            Remedy = "put NC K2 ahead of coil K3",
        };

    public static Finding Waived { get; } =
        new()
        {
            Code = "S031",
            Name = "section-without-isolator",
            Severity = Severity.Caution,
            Message = "nothing isolates Q1:2",
            Location = At("Q1"),
            Devices = ["Q1"],
            Waived = "cord and plug: \"seen\"",
        };

    public static CheckReport Report { get; } =
        new()
        {
            Source = Source,
            Panel = "Pump 2",
            Rules = "NEC",
            Complete = true,
            States = BigInteger.Pow(10, 24) + 7,
            Findings = [Short, Waived],
            ChecksMade = ["short-in-change-over", "section-without-isolator"],
            NotChecked = [new NotChecked("coil-voltage-mismatch", "T1 gives no secondary voltage")],
            Proved = ["never K2 and K3 closed, when settled"],
            Assumed = ["S1 rests at OFF"],
        };

    public static CheckReport Bounded { get; } =
        Report with
        {
            Panel = "Pump 3",
            Complete = false,
            Incomplete = ["the search was stopped after 4,096 states"],
            Findings = [],
            NotChecked = [],
        };

    public static PointReach Backfed { get; } =
        new()
        {
            Point = "T1:H1",
            Reach = Reach.Backfeed,
            From = ["UPS"],
            Path = ["UPS:L", "F9", "T1"],
            Place = "starter",
            Doubt = "K7 may stay in at 60 V",
        };

    public static PointReach Dead { get; } = new() { Point = "M1:U", Reach = Reach.Dead };

    public static LiveAnswer Live { get; } =
        new()
        {
            Panel = "Pump 2",
            Rules = "NEC",
            Start = "powered",
            Steps = [new StoryStep("turn S1 to HAND", "S1", "HAND", "operator")],
            Settled = Settled.Steady,
            State = [new("Q1", "closed"), new("Q1.weld1", "no"), new("S1", "HAND")],
            Points =
            [
                Backfed,
                Backfed with
                {
                    Point = "T1:H4",
                },
                Backfed with
                {
                    Point = "102",
                    Place = null,
                },
                Dead,
            ],
            Loads = [new("M1", "dead")],
            RestsOn = ["X1:7 is untraced"],
            Assumed = ["S1 rests at OFF"],
        };

    public static WhyAnswer Why { get; } =
        new()
        {
            Panel = "Pump 2",
            Rules = "NEC",
            Point = "T1:H1",
            CanBeLive = Verdict.Yes,
            Reach = Backfed,
            Story = [new StoryStep("operate Q9", "Q9", "closed", "operator")],
        };

    public static IsolateAnswer Isolate { get; } =
        new()
        {
            Panel = "Pump 2",
            Rules = "NEC",
            Targets = ["M1"],
            Count = 592_912,
            Sets =
            [
                new IsolatingSet([new Isolator("Q1", "incoming", 1, true, true)], []),
                new IsolatingSet([new Isolator("Q2", null, 2, false, false)], ["discharge C1"]),
            ],
            Have = new OwnSet
            {
                Devices = ["Q3"],
                Enough = Verdict.No,
                NotIsolating = ["K1 is a contactor"],
                Stays = Backfed,
                Witness = [new("K3", "welded")],
            },
            StaysLive = [Backfed],
            WholeOnly = [new WholeOnly("XD1 to PE", ["M1:U"], "measure M1:U to PE")],
            RestsOn = ["X1:7 is untraced"],
        };
}
