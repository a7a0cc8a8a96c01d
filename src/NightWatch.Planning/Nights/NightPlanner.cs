namespace NightWatch.Planning.Nights;

/// <summary>From a watch, a night, a forecast and a clock reading to the whole plan. Pure.</summary>
public static class NightPlanner
{
    /// <summary>Evaluates one watch for one night.</summary>
    public static NightPlan Plan(NightInputs inputs) => throw new NotImplementedException();
}
