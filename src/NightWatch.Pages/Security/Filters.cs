namespace NightWatch.Pages.Security;

/// <summary>Puts a filter that is one of the service's parts before the routes of a group.</summary>
internal static class Filters
{
    /// <remarks>
    /// The framework's own way by type compiles an expression tree for each filter: time at every start, and memory for good.
    /// </remarks>
    public static RouteGroupBuilder Behind<T>(this RouteGroupBuilder group)
        where T : class, IEndpointFilter =>
        group.AddEndpointFilter((context, next) => context.HttpContext.RequestServices.GetRequiredService<T>().InvokeAsync(context, next));
}
