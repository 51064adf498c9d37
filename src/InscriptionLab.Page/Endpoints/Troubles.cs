using System;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Turns everything that goes wrong into one sentence; nothing of the program's inside is shown.</summary>
internal static partial class Troubles
{
    internal static async Task Invoke(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Nobody waits for the answer any more.
        }
        catch (InscriptionLabException problem)
        {
            await Answer(context, StatusCodes.Status422UnprocessableEntity, problem.Message);
        }
        catch (Exception problem) when (CatalogueFault.Of(problem) is { } sentence)
        {
            LogFault(context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("InscriptionLab.Page"), context.TraceIdentifier, problem);
            await Answer(context, StatusCodes.Status503ServiceUnavailable, sentence);
        }
        catch (BadHttpRequestException problem)
        {
            await Answer(context, problem.StatusCode, problem.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? "This is too large; give a smaller copy."
                : "This request is not understood; load the page anew.");
        }
#pragma warning disable CA1031 // The last place that can turn a fault into a sentence; the fault itself goes to the log.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            LogFault(context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("InscriptionLab.Page"), context.TraceIdentifier, problem);
            await Answer(context, StatusCodes.Status500InternalServerError, $"The program stumbled (number {context.TraceIdentifier}); the terminal in which it runs says more.");
        }
    }

    private static async Task Answer(HttpContext context, int status, string sentence)
    {
        if (!context.Response.HasStarted)
        {
            context.Response.StatusCode = status;
            await context.Response.WriteAsJsonAsync(new ProblemAnswer(sentence));
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {Request} stumbled.")]
    private static partial void LogFault(ILogger log, string request, Exception problem);
}
