using System.Diagnostics;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Diagnostics;

namespace MarkReader.Service.Hosting;

/// <summary>Answers a fault of the program without its stack trace; the trace is in the log, under the number given.</summary>
internal sealed class FaultHandler(DataFolder data) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext context, Exception fault, CancellationToken cancellation)
    {
        if (fault is OperationCanceledException && context.RequestAborted.IsCancellationRequested)
            return true;
        string trace = Activity.Current?.TraceId.ToString() ?? context.TraceIdentifier;
        Failure failure = new(ServiceFailures.Fault, ServiceTexts.Get("faultHandler.programFailedThisNotYour"), ServiceTexts.Word("faultHandler.tryAgainAndReportWith", data.Logs, trace));
        await Problem.From(failure).ExecuteAsync(context);
        return true;
    }
}
