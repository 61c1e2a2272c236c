using System.Security.Cryptography;
using System.Text;

namespace CareRecords.Pooling.Tests;

public sealed class ChildCodeTests
{
    private static readonly byte[] Key = [.. Enumerable.Range(0, 32).Select(i => (byte)i)];

    [Fact]
    public void FromKey_IsTheFirst128BitsOfHmacSha256OverTheEvenedIdentifier()
    {
        // RFC 4231 test case 1: key 20 times 0x0b, data "Hi There" -> b0344c61d8db38535ca8afceaf0bf12b...; the identifier is evened to lower case first,
        // so the case is checked against the platform's HMAC over the evened words.
        var key = Enumerable.Repeat((byte)0x0b, 20).ToArray();
        Assert.Equal("b0344c61d8db38535ca8afceaf0bf12b", Convert.ToHexStringLower(HMACSHA256.HashData(key, Encoding.UTF8.GetBytes("Hi There")))[..32]);
        Assert.Equal(Convert.ToHexStringLower(HMACSHA256.HashData(key, Encoding.UTF8.GetBytes("hi there")))[..32], ChildCode.FromKey(key, "Hi There").Text);
    }

    [Theory]
    [InlineData("Ada Quill", " ada quill ")]
    [InlineData("ZOË", "zoë")]
    public void FromKey_SameIdentifierWrittenOtherwise_SameCode(string one, string other) =>
        Assert.Equal(ChildCode.FromKey(Key, one), ChildCode.FromKey(Key, other));

    [Fact]
    public void FromKey_OtherKey_OtherCode()
    {
        byte[] other = [.. Key];
        other[0] ^= 1;
        Assert.NotEqual(ChildCode.FromKey(Key, "Ada"), ChildCode.FromKey(other, "Ada"));
    }

    [Fact]
    public void FromKey_ShortKeyOrBlankIdentifier_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => ChildCode.FromKey(new byte[15], "Ada"));
        Assert.Throws<ArgumentException>(() => ChildCode.FromKey(Key, " "));
    }

    [Fact]
    public void Random_IsNeverTheSame() => Assert.Equal(1000, Enumerable.Range(0, 1000).Select(_ => ChildCode.Random()).Distinct().Count());

    [Theory]
    [InlineData("A", true)]
    [InlineData("b2", true)]
    [InlineData("12", true)]
    [InlineData("Ada", false)]
    [InlineData("A123", false)]
    [InlineData("1A", false)]
    [InlineData("", false)]
    public void StudyGroup_TakesNoNames(string text, bool taken) => Assert.Equal(taken, StudyGroup.TryRead(text, out _));

    [Theory]
    [InlineData("<1", AgeBand.Under1)]
    [InlineData("under 1", AgeBand.Under1)]
    [InlineData("5–9", AgeBand.From5To9)]
    [InlineData("15 - 17", AgeBand.From15To17)]
    public void AgeBand_ReadsBands(string text, AgeBand band)
    {
        Assert.True(AgeBands.TryRead(text, out var read));
        Assert.Equal(band, read);
    }

    [Fact]
    public void AgeBand_AnExactAgeIsRefused() => Assert.False(AgeBands.TryRead("7", out _));

    [Fact]
    public void StudyKey_TextReadsBack()
    {
        var key = StudyKey.Make();
        Assert.True(StudyKey.TryRead("  " + StudyKey.ToText(key), out var back));
        Assert.Equal(key, back);
        Assert.False(StudyKey.TryRead("secret", out _));
    }
}
