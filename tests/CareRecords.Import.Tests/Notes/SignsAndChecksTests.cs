using static CareRecords.Import.Tests.Notes.Telling;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Temperatures, signs and saturations: which numbers they are, and of whom. The lines are invented.</summary>
public sealed class SignsAndChecksTests
{
    [Theory]
    [InlineData("He felt hot so I took it at 3:30 pm, 100.9", "15:30 temperature 100.9 F")]
    [InlineData("No fever, 98.9 at 8 pm", "20:00 temperature 98.9 F")]
    [InlineData("38.4 at 9pm", "21:00 temperature 38.4 C")]
    [InlineData("7am clapping both lowers 3. 94 bf 96 after", "07:00 session LL3 RL3; 07:00 check 94; 07:00 check 96")]
    [InlineData("2am sats 89, no ox. on", "02:00 check 89 on 0")]
    [InlineData("ox. turned down to 1/4 at 4:00 pm", "16:00 check  on 0.25")]
    [InlineData("7am sats 97.5 on air", "07:00 check 97.5 on 0")]
    [InlineData("8am physio both lowers 3, 96.5 before, 98.5 after", "08:00 session LL3 RL3; 08:00 check 96.5; 08:00 check 98.5")]
    [InlineData("4pm sats 95, temp 100.9", "16:00 check 95; 16:00 temperature 100.9 F")]
    [InlineData("chest at 7.05am, 11am and 5.30pm. Sats 95 after the second, 96 after the third", "07:05 session; 11:00 session; 11:00 check 95; 17:30 session; 17:30 check 96")]
    [InlineData("chest at 7.05am, 11am and 5.30pm. Sat 92 before 1st, 94 after", "07:05 session; 07:05 check 92; 07:05 check 94; 11:00 session; 17:30 session")]
    public void Numbers(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("neighbour child is having fever 39", "")]
    [InlineData("His cousin was sick at 5pm", "")]
    [InlineData("brother has a cough and temp 38.5", "")]
    [InlineData("mum coming at 11am so I can get messages in (nappies, syringes 60ml, bread)", "")]
    [InlineData("Mum was with her when she was sick at 9pm", "21:00 vomit")]
    public void Signs_OfSomebodyElse_AreNone(string line, string expected) => Assert.Equal(expected, Told(Read(line)));
}
