using CareRecords.Import.Notes;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Every line of a text ends in exactly one way, and says which.</summary>
internal static class Balance
{
    public static void Holds(SourceText text, NotesReading reading)
    {
        Assert.Equal(text.Lines.Count, reading.Fates.Count);
        var withRecord = reading.Entries.SelectMany(e => e.Sources).Concat(reading.Omitted.Select(o => o.Source)).Select(s => s.Line!.Value).ToHashSet();
        var asked = reading.Problems.Select(p => p.Source.Line!.Value).ToHashSet();
        var aside = reading.SetAside.Select(s => s.Source.Line!.Value).ToHashSet();
        for (var i = 0; i < text.Lines.Count; i++)
        {
            var line = i + 1;
            switch (reading.Fates[i])
            {
                case LineFate.Blank:
                    Assert.True(!text.Lines[i].Any(c => !char.IsWhiteSpace(c) && !char.IsControl(c)), $"line {line} is not blank: {text.Lines[i]}");
                    break;
                case LineFate.InRecords:
                    Assert.True(withRecord.Contains(line) || reading.Words.Count > 0, $"line {line} gave no record: {text.Lines[i]}");
                    break;
                case LineFate.Problem:
                    Assert.Contains(line, asked);
                    Assert.DoesNotContain(line, withRecord);
                    break;
                default:
                    Assert.Contains(line, aside);
                    Assert.DoesNotContain(line, withRecord);
                    Assert.DoesNotContain(line, asked);
                    break;
            }
        }
    }
}
