using NightWatch.Planning.Chance;

namespace NightWatch.Planning.Tests.Chance;

public sealed class PlaceRecordTests
{
    // Raftery, Karny and Ettler 2010, Technometrics 52, 52, for the forgetting weights; the values were computed independently:
    // two forecasters said .9 and .45, .7 and .45, .8 and .46; the nights were not, were, were not usable.
    [Fact]
    public void Weights_forget_as_Raftery_says()
    {
        var first = Preference.Of(.8).After(Math.Log(.1 / .55));
        var second = first.After(Math.Log(.7 / .45));
        var third = second.After(Math.Log(.2 / .54));

        Assert.Equal([.4160, .5269, .2917], new[] { first, second, third }.Select(preference => Math.Round(preference.Weight, 4)));
    }

    [Fact]
    public void A_preference_of_any_length_of_time_can_return()
    {
        var sure = Enumerable.Range(0, 10_000).Aggregate(Preference.Of(.8), (preference, _) => preference.After(1));
        var after = Enumerable.Range(0, 100).Aggregate(sure, (preference, _) => preference.After(-1));

        Assert.InRange(sure.Weight, .999, 1);
        Assert.InRange(after.Weight, 0, .001);
    }

    // By hand: two usable nights, and one that two watches saw differently.
    [Fact]
    public void The_climate_begins_even_with_the_weight_of_four_nights()
    {
        var record = PlaceRecord.Start.After([(.5, true)]).After([(.5, true)]).After([(.5, true), (.5, false)]);

        Assert.Equal(.5, PlaceRecord.Start.Climate);
        Assert.Equal((2 + 2.5) / (4 + 3), record.Climate, 12);
    }

    [Fact]
    public void Two_looks_at_one_night_are_one_night()
    {
        var once = PlaceRecord.Start.After([(.9, true)]);

        Assert.Equal(once, PlaceRecord.Start.After([(.9, true), (.9, true)]));
        // By hand: the forecast's likelihood .9 against the climate's .5.
        Assert.Equal(.985 * Math.Log(4) + Math.Log(.9 / .5), once.Preference.LogOdds, 12);
    }
}
