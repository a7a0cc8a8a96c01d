using NightWatch.Service.Terminal;
using NightWatch.Sky.Subjects;
using NightWatch.Words;

namespace NightWatch.Service.Tests.Terminal;

public class SubjectNamesTests
{
    [Fact]
    public void Without_a_name_it_is_the_galactic_core() =>
        Assert.Equal(new Subject.GalacticCore(), SubjectNames.SubjectOf(null, null, null));

    [Fact]
    public void Names_numbers_longitudes_and_directions_are_known()
    {
        Assert.Equal(new Subject.Stars(), SubjectNames.SubjectOf("stars", null, null));
        Assert.Equal(new Subject.GalacticBand(30.5), SubjectNames.SubjectOf("galactic-band 30.5", null, null));
        Assert.Equal("M 31 Andromeda Galaxy", Speech.ToAnybody.Language.Of(SubjectNames.SubjectOf("m31", null, null)));
        Assert.Equal(new Subject.FixedPoint("", 0, 5), SubjectNames.SubjectOf(null, 360, 5));
    }

    [Theory]
    [InlineData("galactic-band 400", null, null)]
    [InlineData("moon", null, null)]
    [InlineData("stars", 10.0, 20.0)]
    [InlineData(null, null, 20.0)]
    public void Anything_else_is_refused(string? name, double? rightAscensionDeg, double? declinationDeg) =>
        Assert.Throws<BadInputException>(() => SubjectNames.SubjectOf(name, rightAscensionDeg, declinationDeg));
}
