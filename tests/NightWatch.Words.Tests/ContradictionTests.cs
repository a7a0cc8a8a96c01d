using System.Collections.Concurrent;
using CsCheck;

namespace NightWatch.Words.Tests;

public sealed class ContradictionTests
{
    [Fact]
    public void No_two_statements_about_one_quantity_contradict_each_other()
    {
        var found = new ConcurrentQueue<string>();
        PlannedNights.All.Sample(plan => Contradictions.In(plan).ToList().ForEach(found.Enqueue), iter: 600);

        Assert.True(
            found.IsEmpty,
            string.Join('\n', found.GroupBy(pair => pair.Split(':')[0]).Select(group => $"{group.Count()} times {group.First()}")));
    }
}
