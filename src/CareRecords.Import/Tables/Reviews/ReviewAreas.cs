using System.Globalization;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Reviews;

/// <summary>Reads the column "other areas" of a review workbook: "right middle percussion 3 min; both whole other 10 min; 2-3 min".</summary>
internal static class ReviewAreas
{
    /// <summary>The areas; pieces that are none of the review's own writing are passed over.</summary>
    public static IEnumerable<AreaMinutes> Read(string? text)
    {
        foreach (var piece in (text ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var (side, area, technique) = (Side.Unknown, ChestArea.Unknown, Technique.Unknown);
            (double? low, double? high) = (null, null);
            foreach (var word in piece.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (char.IsAsciiDigit(word[0]))
                {
                    var ends = word.Split('-');
                    low = Number(ends[0]);
                    high = ends.Length == 2 ? Number(ends[1]) : null;
                }
                else if (Enum.TryParse<Side>(word, ignoreCase: true, out var named)) side = named;
                else if (Enum.TryParse<ChestArea>(word, ignoreCase: true, out var part)) area = part;
                else if (Enum.TryParse<Technique>(word, ignoreCase: true, out var how)) technique = how;
            }

            yield return new AreaMinutes(side, area, technique, low, high);
        }
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
}
