using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>How a practice visit ended.</summary>
/// <param name="Last">The last advice: done, stop, or an action that could not be carried out.</param>
/// <param name="Refused">Why the last action could not be carried out; null otherwise.</param>
public sealed record PracticeEnd(VisitAdvice Last, Failure? Refused);

/// <summary>Plays a practice visit to its end, always doing what is advised.</summary>
public static class PlayPractice
{
    private const int MostActions = 300;

    /// <param name="session">Changed: its steps are done.</param>
    /// <param name="advised">Told of every advice before it is followed.</param>
    /// <param name="done">Told of every step after it.</param>
    public static Outcome<PracticeEnd> Run(PracticeSession session, Action<VisitAdvice>? advised = null, Action<PracticeStep>? done = null)
    {
        for (int i = 0; ; i++)
        {
            if (!session.Advise().TryGet(out VisitAdvice? advice, out Failure? failure))
                return failure;
            advised?.Invoke(advice);
            if (advice.Action is VisitAction.Done or VisitAction.Stop || i == MostActions)
                return new PracticeEnd(advice, null);
            if (!session.Do(advice.Action).TryGet(out PracticeStep? step, out failure))
                return new PracticeEnd(advice, failure);
            done?.Invoke(step);
        }
    }
}
