using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace NightWatch.Pages.Layout;

/// <summary>Answers with a page.</summary>
internal static class PageResult
{
    /// <summary>A component that takes everything as one model under the parameter "Model".</summary>
    public static IResult Of<TPage>(object model, int status = StatusCodes.Status200OK)
        where TPage : IComponent => Of<TPage>(new Dictionary<string, object?> { ["Model"] = model }, status);

    /// <summary>A component and its parameters by name.</summary>
    public static IResult Of<TPage>(IReadOnlyDictionary<string, object?> parameters, int status = StatusCodes.Status200OK)
        where TPage : IComponent =>
        new RazorComponentResult<TPage>(parameters) { StatusCode = status, PreventStreamingRendering = true };

    /// <summary>A page of one heading and a few sentences.</summary>
    public static IResult Says(string title, int status, params IReadOnlyList<string> sentences) =>
        Of<PlainPage>(
            new Dictionary<string, object?> { [nameof(PlainPage.Title)] = title, [nameof(PlainPage.Sentences)] = sentences }, status);

    /// <summary>What every link that opens nothing gets, whatever the reason: the answer tells nobody what exists.</summary>
    public static IResult NothingHere() => Says(
        "This link opens nothing",
        StatusCodes.Status404NotFound,
        "It may be incomplete (mail programs sometimes cut a long line), out of date, or meant for a watch that is no more.",
        "Copy the whole link from the letter, or sign in to see your watches.");
}
