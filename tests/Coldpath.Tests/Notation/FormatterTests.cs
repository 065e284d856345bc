using Coldpath.Notation.Syntax;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

public class FormatterTests
{
    public static TheoryData<Sample> Texts => new(Samples.All);

    [Theory]
    [MemberData(nameof(Texts))]
    public void Samples_stay_what_they_mean(Sample sample) => RoundTrip.Check(sample.Text);

    [Fact]
    public void Columns_comments_and_gaps()
    {
        const string text = """


            # Head
            panel "P"
            drawing D1   revision A
               rules IEC # the rules
            system 400V 3-phase 50Hz,TN-S



            fuse F1 2A#not a comment
            """;
        Read.Format(
                text.Replace(
                    "2A#not a comment",
                    "2A   # small\ncontrol transformer T1 and T2 400V to 230V\nlamp P1"
                )
            )
            .Should()
            .Be(
                """
                # Head
                panel "P"
                  drawing D1 revision A
                  rules   IEC  # the rules
                  system  400 V 3-phase 50 Hz, TN-S

                fuse                 F1        2 A  # small
                control transformer  T1 and T2 400 V to 230 V
                lamp                 P1

                """
            );
    }

    [Fact]
    public void A_line_of_several_rows_is_joined_unless_a_comment_stands_in_it()
    {
        Read.Format("MAINS->(F1\n|F2)->\nM1\n").Should().Be("MAINS -> ( F1 | F2 ) -> M1\n");
        Read.Format("MAINS->(F1 # one\n# two\n|F2)->\nM1\n")
            .Should()
            .Be("MAINS -> ( F1  # one\n    # two\n    | F2 ) ->\n    M1\n");
    }

    [Fact]
    public void A_long_line_keeps_its_rows()
    {
        var tags = string.Join(" ->\n    ", Enumerable.Range(1, 30).Select(n => $"TERMINAL{n}"));
        Read.Format(tags + "\n").Should().Be(tags + "\n");
    }

    [Fact]
    public void Next_free_contacts_get_their_numbers()
    {
        const string text = "rung 1  1 -> ( NO K1 | NC K2 -> NO K1 ) -> coil K3 -> 2\n";
        var numbers = new Dictionary<int, string>
        {
            [text.IndexOf("NO K1", StringComparison.Ordinal)] = "13-14",
            [text.LastIndexOf("NO K1", StringComparison.Ordinal)] = "23-24",
        };
        Read.Format(text, numbers)
            .Should()
            .Be("rung 1  1 -> ( NO K1:13-14 | NC K2 -> NO K1:23-24 ) -> coil K3 -> 2\n");
    }

    [Theory]
    [InlineData("fuse  F1   2 A\ncontactor\n")]
    [InlineData("fuse  F1   2 A# no\n")]
    public void A_text_with_mistakes_stays_as_it_is(string text) => Read.Format(text).Should().Be(text);

    [Fact]
    public void Comments_in_a_kind_stand_with_its_lines()
    {
        Read.Format(
                "kind a\n# one\nflag x # two\nif y\n# three\nelse\nflag z\n# four\nend\n# five\nend\n# six\n"
            )
            .Should()
            .Be(
                """
                kind a
                  # one
                  flag    x  # two
                  if y
                    # three
                  else
                    flag    z
                    # four
                  end
                  # five
                end
                # six

                """
            );
    }

    [Theory]
    [InlineData("angle  -120", "angle -120")]
    [InlineData("angle  -  120", "angle - 120")]
    [InlineData("angle (a)*b", "angle (a) * b")]
    public void Signs_keep_their_meaning(string before, string after) =>
        Read.Format($"kind a\nsource\nconductor [L1] at 1 {before}\nend\nend\n")
            .Should()
            .Contain(after + "\n");
}
