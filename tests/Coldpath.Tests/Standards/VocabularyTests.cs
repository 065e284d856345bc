using Coldpath.Standards;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Standards;

public class VocabularyTests
{
    [Fact]
    public void Each_rule_set_speaks_its_own_words()
    {
        Vocabulary.For("NEC").Dead.Should().Be("de-energized");
        Vocabulary.For("IEC").Dead.Should().Be("dead");
        Vocabulary.For("NEC").ProspectiveCurrent.Should().Be("available fault current");
        Vocabulary.For("IEC").ProspectiveCurrent.Should().Be("prospective short-circuit current");
    }

    [Fact]
    public void No_word_is_missing_and_none_of_the_other_rule_set_slips_in()
    {
        foreach (
            var property in typeof(Vocabulary).GetProperties().Where(p => p.PropertyType == typeof(string))
        )
        {
            var nec = (string)property.GetValue(Vocabulary.Nec)!;
            var iec = (string)property.GetValue(Vocabulary.Iec)!;
            nec.Should().NotBeNullOrWhiteSpace();
            iec.Should().NotBeNullOrWhiteSpace();
            nec.Should().NotContainAny("earthed", "earth ", "isolator", "prospective");
            iec.Should().NotContainAny("ground", "disconnect", "available fault", "energiz");
        }
    }
}
