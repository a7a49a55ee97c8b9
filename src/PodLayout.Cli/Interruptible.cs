namespace PodLayout.Cli;

/// <summary>Work that looks at no token, which Ctrl-C ends all the same.</summary>
internal static class Interruptible
{
    /// <summary>
    /// Does the work. Once it is interrupted the work is left to itself, and ends with the program; it must not write files.
    /// </summary>
    public static T Run<T>(Func<T> work, CancellationToken cancellation)
    {
        var task = Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            task.Wait(cancellation);
        }
        catch (AggregateException)
        {
            // Thrown below as it was.
        }

        return task.GetAwaiter().GetResult();
    }
}
