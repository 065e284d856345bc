using System.Globalization;
using System.Text;

namespace Coldpath.Trials.Sites;

/// <summary>Descriptions of the panels that generated sites are made of.</summary>
internal static class StarterTexts
{
    private const string Header = """
          rules   NEC
          system  480 V 3-phase 60 Hz, solidly earthed wye

        """;

    public static string Starter(StarterShape shape)
    {
        var text = new StringBuilder();
        text.Append("panel \"Starter\"\n").Append(Header).Append('\n');
        Devices(text, shape);
        text.Append('\n').Append(Power(shape)).Append('\n').Append(Supply(shape)).Append('\n');
        Rungs(text, shape);
        return text.ToString();
    }

    /// <summary>Two incomers, a tie, and a transformer for the control voltage of starters here and next door.</summary>
    public static string LineUp(int feeders)
    {
        var text = new StringBuilder();
        text.Append("panel \"Line-up\"\n").Append(Header);
        text.Append(
            """

            supply GA 480Y/277 V, available 22 kA
            supply GB 480Y/277 V, available 22 kA, synchronised with GA
            breaker QA and QB 800 A, interrupting 35 kA, lockable
            breaker QT 800 A, interrupting 35 kA, lockable, standby
            distribution block XA and XB three-pole
            control transformer TC 480 V to 120 V, 1000 VA, X2 earthed
            fuse FC1 and FC2 5 A
            fuse FC3 10 A
            terminal strip X9

            """
        );
        text.Append("breaker ")
            .Append(Numbers("Q", feeders))
            .Append(" 100 A, interrupting 35 kA, lockable\n\n");
        text.Append("GA[L1, L2, L3] -> QA -> XA -> QT -> XB\nGB[L1, L2, L3] -> QB -> XB\n");
        for (var i = 1; i <= feeders; i++)
            text.Append(CultureInfo.InvariantCulture, $"X{(i % 2 == 1 ? 'A' : 'B')} -> Q{i}\n");
        text.Append("XA[L1] -> FC1 -> TC:H1\nXA[L2] -> FC2 -> TC:H4\nTC:X1 -> FC3 -> X9:1\nTC:X2 -> X9:2\n");
        return text.ToString();
    }

    /// <summary>A distribution board; the root has a generator behind a transfer switch besides.</summary>
    public static string Board(int feeders, bool isRoot)
    {
        var text = new StringBuilder();
        text.Append("panel \"Distribution board\"\n")
            .Append(Header)
            .Append("\nsupply MAINS 480Y/277 V, available 30 kA\n");
        text.Append("breaker Q0 2000 A, interrupting 50 kA, lockable\ndistribution block XD three-pole\n");
        if (isRoot)
            text.Append(
                    "generator GEN 480Y/277 V, available 8 kA\nbreaker QG 1200 A, interrupting 50 kA, lockable\n"
                )
                .Append("transfer switch TS 1200 A, manual\n");
        text.Append("breaker ")
            .Append(Numbers("Q", feeders))
            .Append(" 800 A, interrupting 50 kA, lockable\n\n");
        text.Append(
            isRoot
                ? "MAINS[L1, L2, L3] -> Q0 -> TS[N1, N2, N3]\nGEN[L1, L2, L3] -> QG -> TS[E1, E2, E3]\nTS[T1, T2, T3] -> XD\n"
                : "MAINS[L1, L2, L3] -> Q0 -> XD\n"
        );
        for (var i = 1; i <= feeders; i++)
            text.Append(CultureInfo.InvariantCulture, $"XD -> Q{i}\n");
        return text.ToString();
    }

    private static string Numbers(string letter, int count) =>
        string.Join(
            " and ",
            Enumerable.Range(1, count).Select(i => letter + i.ToString(CultureInfo.InvariantCulture))
        );

    private static void Devices(StringBuilder text, StarterShape shape)
    {
        text.Append(
            """
            supply MAINS 480Y/277 V, available 18 kA
            disconnect Q1 60 A, lockable, visible break, in "incoming"
            fuse F1 three-pole 60 A class J, interrupting 200 kA, in "starter"
            contactor K1 32 A AC-3, coil 120 V, in "starter"
            overload relay F2 class 10, range 20 A to 32 A, set 27 A, in "starter"
            motor M1 20 hp 460 V, 27 A
            fuse F12 2 A, in "starter"
            emergency stop S0 in "door"
            push button S1 in "door"
            terminal strip X1 in "starter"

            """
        );
        if (shape.Control == Control.Own)
            text.Append(
                "control transformer T1 480 V to 120 V, 250 VA, X2 earthed, in \"starter\"\nfuse F10 and F11 1 A\n"
            );
        else
            text.Append("control supply FC 120 V\n");
        if (shape.Kind == StarterKind.HandAuto)
            text.Append("selector S2 HAND | OFF | AUTO, in \"door\"\n");
        if (shape.Kind == StarterKind.Reversing)
            text.Append(
                    "contactor K2 32 A AC-3, coil 120 V, in \"starter\"\nmechanical interlock MI1 between K1 and K2\n"
                )
                .Append("reversing pair RP1 between K1 and K2\npush button S3 in \"door\"\n");
        if (shape.Kind == StarterKind.SoftStarter)
            text.Append(
                "soft starter U1 34 A, three-leg, overload class 10 set 27 A, control supply 120 V, in \"starter\"\n"
            );
        for (var i = 0; i < shape.Permissives.Count; i++)
            text.Append(CultureInfo.InvariantCulture, $"{shape.Permissives[i]} B{i + 1} opens on limit\n");
        for (var i = 0; i < shape.Lamps; i++)
            text.Append(CultureInfo.InvariantCulture, $"lamp H{i + 1} {(i == 0 ? "red" : "amber")}\n");
    }

    private static string Power(StarterShape shape) =>
        shape.Kind switch
        {
            StarterKind.Reversing =>
                "MAINS[L1, L2, L3] -> Q1 -> F1 -> K1 -> F2 -> M1\nF1 -> K2 -> F2[5/L3, 3/L2, 1/L1]\n",
            StarterKind.SoftStarter => "MAINS[L1, L2, L3] -> Q1 -> F1 -> K1 -> U1 -> F2 -> M1\n",
            _ => "MAINS[L1, L2, L3] -> Q1 -> F1 -> K1 -> F2 -> M1\n",
        };

    private static string Supply(StarterShape shape) =>
        shape.Control == Control.Own
            ? "Q1[L1] -> F10 -> T1:H1\nQ1[L2] -> F11 -> T1:H4\nT1:X1 -> F12 -> rail 1\nT1:X2 -> rail 2\n"
            : "FC:L -> F12 -> rail 1\nFC:N -> rail 2\n";

    private static void Rungs(StringBuilder text, StarterShape shape)
    {
        var rung = 0;
        var permitted = string.Concat(shape.Permissives.Select((_, i) => $" -> NC B{i + 1}:11-12"));
        Add($"1 -> S0 -> F2:95-96{permitted} -> node 10");
        switch (shape.Kind)
        {
            case StarterKind.HandAuto:
                Add(
                    "10 -> ( S2 at HAND:13-14 -> ( S1 | NO K1:13-14 ) | S2 at AUTO:23-24 -> X1:1 ) -> node 11"
                );
                Add("X1:2 -> node 11");
                Add("11 -> coil K1 -> 2");
                break;
            case StarterKind.Reversing:
                Add("10 -> ( S1 | NO K1:13-14 ) -> NC K2:11-12 -> coil K1 -> 2");
                Add("10 -> ( S3 | NO K2:13-14 ) -> NC K1:11-12 -> coil K2 -> 2");
                break;
            default:
                Add("10 -> ( S1 | NO K1:13-14 ) -> coil K1 -> 2");
                break;
        }
        if (shape.Kind == StarterKind.SoftStarter)
        {
            Add("1 -> NO K1:43-44 -> input U1 run -> 2");
            Add("1 -> supply U1 -> 2");
        }
        if (shape.Heating)
        {
            Add("1 -> NC K1:51-52 -> M1:U");
            Add("M1:V -> NC K1:61-62 -> 2");
        }
        for (var i = 0; i < shape.Lamps; i++)
            Add(i == 0 ? "1 -> NO K1:23-24 -> H1 -> 2" : $"1 -> F2:97-98 -> H{i + 1} -> 2");
        Add("X1:5 -> NO K1:33-34 -> X1:6");

        void Add(string line) => text.Append(CultureInfo.InvariantCulture, $"rung {++rung} {line}\n");
    }
}
