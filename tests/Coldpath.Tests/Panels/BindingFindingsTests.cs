using Coldpath.Devices;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Tests.Notation;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

/// <summary>What binding says, where, and what it keeps silent about.</summary>
public class BindingFindingsTests
{
    [Fact]
    public void Names_are_missed_once_and_near_ones_are_offered() =>
        Check(
            """
            panel "Test"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            supply        MAINS
            disconnect    Q1     63 A
            contacter     K1     9 A, coil 230 V
            ^^^^^^^^^ P015 there is no kind "contacter" (did you mean contactor?)
            motor         M1     4 kW
            MAINS -> Q2 -> K1 -> M1
                     ^^ P001 Q2 is not declared (did you mean Q1?)
            rung 1 node 1 -> NO K1 -> coil K1 -> node 2
            never K1 closed
            dead M1 when Q1 opne
                            ^^^^ P012 Q1 has no state "opne"; it has closed, open, live, dead (did you mean open?)
            """
        );

    [Fact]
    public void The_header_is_complete_and_said_once() =>
        Check(
            """
            panel "Test"
            ^ P003 the header does not say rules NEC or rules IEC
            panel "Again"
            ^^^^^^^^^^^^^ P003 panel is said twice
              system  400 V 3-phase, solidly earthed why
              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ P003 the system does not say its frequency in Hz
                                     ^^^^^^^^^^^^^^^^^^^ P003 "solidly earthed why" is no earthing that is known (did you mean solidly earthed wye?)
            """
        );

    [Fact]
    public void Nodes_and_tags_do_not_share_names() =>
        Check(
            """
            panel "Test"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            supply          MAINS
            terminal strip  X1
            lamp            P1     red
            MAINS[L1] -> rail X1
                              ^^ P002 X1 is already the tag of a device
            X1:1 -> P1 -> MAINS[N]
            """
        );

    [Fact]
    public void Other_devices_that_a_declaration_names_must_be_there_and_fit() =>
        Check(
            """
            panel "Test"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            supply                MAINS
            contactor             K1     9 A, coil 230 V
            selector              S1     HAND | OFF
            mechanical interlock  A1     K1 and K2
                                                ^^ P001 K2 is not declared (did you mean K1?)
            mechanical interlock  A2     K1 and S1
                                                ^^ P016 S1 has no state "closed", which A2 speaks of
            overload relay        F3     9 A, current transformers S1
                                                                   ^^ P016 S1 has nothing that senses current, which F3 would act on
            """
        );

    [Fact]
    public void A_mistake_in_a_chain_is_not_repeated_by_what_it_feeds() =>
        Check(
            """
            panel "Test"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            supply      MAINS
            disconnect  Q1     63 A
            fuse        F1     three-pole 10 A
            fuse        F10    2 A
            lamp        P1     red
            MAINS -> Q1[L1, L2] -> F1
                     ^^^^^^^^^^ P007 MAINS brings 3 conductors (L1, L2, L3), but Q1[L1, L2] takes 2 conductors (L1, L2) (name the conductors of MAINS that are meant in brackets)
            F1[L2] -> F10 -> P1 -> MAINS[N]
            """
        );

    [Fact]
    public void A_side_that_is_not_met_is_not_guessed() =>
        Check(
            """
            panel "Test"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            supply      MAINS
            contactor   K1     9 A, coil 230 V
            contactor   K2     9 A, coil 230 V
            MAINS -> K1
            K1 -> K2[T1, T2, T3]
                     ^^ P006 T1 of K2 is not on its line side, which the chain meets here (write 2/T1 if the load side is meant)
            """
        );

    private static void Check(string annotated) =>
        Carets
            .Draw(annotated, s => PanelBinder.Bind(PanelParser.Parse(s), KindLibrary.Standard).Findings)
            .Should()
            .Be(annotated);
}
