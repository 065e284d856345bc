using System.Globalization;
using System.Numerics;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>Exact numbers in words: "1 finding", "2,349 states".</summary>
internal static class Count
{
    public static string Of(BigInteger number, string one, string? many = null) =>
        $"{Exact(number)} {(number.IsOne ? one : many ?? one + "s")}";

    public static string Exact(BigInteger number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
