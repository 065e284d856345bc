using CsCheck;
using Xunit;

namespace Coldpath.Tests.Notation;

public class RoundTripTests
{
    [Fact]
    public void Random_texts_stay_what_they_mean() =>
        RandomTexts.File.Sample(RoundTrip.Check, iter: 2_000, threads: 1);
}
