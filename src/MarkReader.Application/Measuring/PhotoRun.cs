using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;

namespace MarkReader.Application.Measuring;

/// <summary>Work on many photos, as many at a time as there are processor cores.</summary>
internal static class PhotoRun
{
    /// <summary>The results in the order of the photos.</summary>
    /// <param name="work">What is done with the photo of this number.</param>
    /// <param name="progress">Told after each photo how many are done and how many there are; calls come one at a time.</param>
    public static T[] Each<T>(int count, Func<int, T> work, Action<int, int>? progress)
    {
        T[] results = new T[count];
        Lock told = new();
        int done = 0;
        // One index at a time: a photo takes long, and each one in work holds some 100 MB.
        OrderablePartitioner<int> indices = Partitioner.Create(Enumerable.Range(0, count), EnumerablePartitionerOptions.NoBuffering);
        try
        {
            Parallel.ForEach(indices, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
            {
                results[i] = work(i);
                lock (told)
                    progress?.Invoke(++done, count);
            });
        }
        catch (AggregateException faults)
        {
            // The first fault, as it would come without parallel work.
            ExceptionDispatchInfo.Throw(faults.InnerExceptions[0]);
        }

        return results;
    }
}
