using NightWatch.Sky.Frames;
using NightWatch.Sky.Subjects;

namespace NightWatch.Sky.Tests.Subjects;

public class ShowpiecesTests
{
    // Wikipedia, "Messier object" (2021), whose positions are those of SIMBAD and NED: J2000. Clusters and nebulae have no sharp centre, so
    // lists differ by a tenth of a degree. M 44, the widest, is left out: 0.3 degrees between the lists.
    [Theory]
    [InlineData("M 1", 83.6331, 22.0145)] // 05h34m31.94s +22d00m52.2s
    [InlineData("M 4", 245.8968, -26.5257)] // 16h23m35.22s -26d31m32.7s
    [InlineData("M 6", 265.0250, -32.2167)] // 17h40m06s -32d13m00s
    [InlineData("M 7", 268.4633, -34.7928)] // 17h53m51.2s -34d47m34s
    [InlineData("M 8", 270.9042, -24.3867)] // 18h03m37s -24d23m12s
    [InlineData("M 11", 282.7750, -6.2667)] // 18h51m06s -06d16m00s
    [InlineData("M 13", 250.4218, 36.4599)] // 16h41m41.24s +36d27m35.5s
    [InlineData("M 16", 274.7000, -13.8167)] // 18h18m48s -13d49m00s
    [InlineData("M 17", 275.1083, -16.1767)] // 18h20m26s -16d10m36s
    [InlineData("M 20", 270.5958, -23.0300)] // 18h02m23s -23d01m48s
    [InlineData("M 22", 279.0998, -23.9047)] // 18h36m23.94s -23d54m17.1s
    [InlineData("M 27", 299.9014, 22.7211)] // 19h59m36.34s +22d43m16.09s
    [InlineData("M 31", 10.6846, 41.2692)] // 00h42m44.3s +41d16m09s
    [InlineData("M 33", 23.4584, 30.6602)] // 01h33m50.02s +30d39m36.7s
    [InlineData("M 42", 83.8221, -5.3911)] // 05h35m17.3s -05d23m28s
    [InlineData("M 45", 56.8500, 24.1167)] // 03h47m24s +24d07m00s
    [InlineData("M 51", 202.4696, 47.1953)] // 13h29m52.7s +47d11m43s
    [InlineData("M 57", 283.3962, 33.0292)] // 18h53m35.079s +33d01m45.03s
    [InlineData("M 63", 198.9554, 42.0292)] // 13h15m49.3s +42d01m45s
    [InlineData("M 64", 194.1821, 21.6828)] // 12h56m43.7s +21d40m58s
    [InlineData("M 81", 148.8883, 69.0653)] // 09h55m33.2s +69d03m55s
    [InlineData("M 82", 148.9675, 69.6797)] // 09h55m52.2s +69d40m47s
    [InlineData("M 83", 204.2537, -29.8658)] // 13h37m00.9s -29d51m57s
    [InlineData("M 97", 168.6989, 55.0190)] // 11h14m47.734s +55d01m08.5s
    [InlineData("M 101", 210.8025, 54.3492)] // 14h03m12.6s +54d20m57s
    [InlineData("M 104", 189.9975, -11.6231)] // 12h39m59.4s -11d37m23s
    [InlineData("M 106", 184.7396, 47.3039)] // 12h18m57.5s +47d18m14s
    public void Messier_objects_stand_where_another_list_has_them(string number, double rightAscensionDeg, double declinationDeg)
    {
        var piece = Showpieces.Find(number);
        Assert.NotNull(piece);
        var separation = Vector3D.FromDegrees(piece.RightAscensionDeg, piece.DeclinationDeg)
            .AngleTo(Vector3D.FromDegrees(rightAscensionDeg, declinationDeg));
        Assert.InRange(double.RadiansToDegrees(separation), 0, 0.1);
    }

    // From memory, SIMBAD: J2000 positions of objects outside Messier's list.
    [Theory]
    [InlineData("NGC 5139", 201.697, -47.480)]
    [InlineData("NGC 104", 6.024, -72.081)]
    [InlineData("NGC 7293", 337.411, -20.837)]
    [InlineData("NGC 5128", 201.365, -43.019)]
    [InlineData("NGC 2070", 84.677, -69.101)]
    [InlineData("LMC", 80.894, -69.756)]
    [InlineData("SMC", 13.187, -72.829)]
    public void Other_objects_stand_where_they_are_remembered(string name, double rightAscensionDeg, double declinationDeg)
    {
        var piece = Showpieces.Find(name)!;
        Assert.Equal(rightAscensionDeg, piece.RightAscensionDeg, 0.02);
        Assert.Equal(declinationDeg, piece.DeclinationDeg, 0.02);
    }

    [Theory]
    [InlineData("M 31")]
    [InlineData("m31")]
    [InlineData("M031")]
    [InlineData("Messier 31")]
    [InlineData("NGC 224")]
    [InlineData("ngc0224")]
    [InlineData("Andromeda galaxy")]
    [InlineData("ANDROMEDA-GALAXY")]
    public void Any_spelling_finds_it(string spelling) => Assert.Equal("M 31 Andromeda Galaxy", Showpieces.Find(spelling)?.Title);

    [Theory]
    [InlineData("")]
    [InlineData("M 310")]
    [InlineData("galactic core")]
    [InlineData("M")]
    public void What_is_not_in_the_table_is_not_found(string name) => Assert.Null(Showpieces.Find(name));

    [Fact]
    public void Every_piece_is_found_by_each_of_its_names()
    {
        Assert.Equal(68, Showpieces.All.Count);
        foreach (var piece in Showpieces.All)
        {
            Assert.All(piece.Designations.Concat(piece.Names), name => Assert.Same(piece, Showpieces.Find(name)));
            Assert.InRange(piece.RightAscensionDeg, 0, 360);
            Assert.InRange(piece.DeclinationDeg, -90, 90);
        }
    }

    [Fact]
    public void A_showpiece_is_a_subject_that_bears_its_name() =>
        Assert.Equal(new Subject.FixedPoint("M 42 Orion Nebula", 83.8187, -5.3897), Showpieces.Find("Orion Nebula")!.ToSubject());
}
