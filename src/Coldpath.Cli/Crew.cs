namespace Coldpath.Cli;

/// <summary>
/// Works through a list on several threads and hands the results out in the order of the list, so that nothing printed
/// from them depends on how many threads there are. What a piece of work throws is thrown where its result is due.
/// </summary>
internal sealed class Crew<TItem, TResult>(int threads, Func<TItem, TResult> work)
{
    /// <summary>Bytes: as much as a main thread has, since diagrams are walked by recursion.</summary>
    private const int Stack = 8 * 1024 * 1024;

    public IEnumerable<TResult> Do(IReadOnlyList<TItem> items) =>
        Math.Min(threads, items.Count) <= 1 ? items.Select(work) : Share(items);

    private IEnumerable<TResult> Share(IReadOnlyList<TItem> items)
    {
        TaskCompletionSource<TResult>[] results = [.. items.Select(_ => new TaskCompletionSource<TResult>())];
        var taken = 0;
        for (var i = 0; i < Math.Min(threads, items.Count); i++)
            new Thread(Take, Stack) { IsBackground = true }.Start();
        try
        {
            foreach (var result in results)
                yield return result.Task.GetAwaiter().GetResult();
        }
        finally
        {
            Interlocked.Exchange(ref taken, items.Count);
        }

        void Take()
        {
            for (int i; (i = Interlocked.Increment(ref taken) - 1) < items.Count; )
                Work(items[i], results[i]);
        }
    }

    private void Work(TItem item, TaskCompletionSource<TResult> result)
    {
        try
        {
            result.SetResult(work(item));
        }
        catch (Exception thrown)
        {
            result.SetException(thrown);
        }
    }
}
