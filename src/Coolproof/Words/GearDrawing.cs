using Coolproof.Advice.Gearing;
using Coolproof.Evidence.Forecasts;
using Coolproof.Pictures;

namespace Coolproof.Words;

/// <summary>Pinion and timing as a picture, the same on the page and by `coolproof gear --picture`.</summary>
internal static class GearDrawing
{
    /// <summary>Draws every option over the pinions at the timing of the quickest, for can or winding: whichever comes nearer to its limit.</summary>
    public static Picture Of(GearQuestion question, GearAnswer answer, PictureStyle style)
    {
        double timing = Timing(question, answer);
        int[] shown = [.. Enumerable.Range(0, answer.Gears.Count).Where(i => answer.Gears[i].Choice.TimingDeg == timing).OrderBy(i => answer.Gears[i].Choice.Pinion)];
        RaceLimit limit = Nearest(question, answer);
        GearLine[] lines = [.. answer.Options.Select(option =>
        {
            GearSpot[] spots = [.. shown.Select(i => new GearSpot(
                answer.Gears[i].Choice.Pinion, answer.Gears[i].LapS.Q50, limit.Part == LimitedPart.Winding ? option.Gears[i].PeakWindingC : option.Gears[i].PeakCanC,
                answer.Gears[i].PackLasts && option.Gears[i].OddsOfAny <= question.Demand.AcceptedOdds))];
            int best = -1;
            for (int i = 0; i < spots.Length; i++)
                if (spots[i].Accepted && (best < 0 || spots[i].LapS < spots[best].LapS)) best = i;
            return new GearLine(option.Option, spots, best < 0 ? null : best);
        })];
        return GearPicture.Of(lines, limit, GearPage.Sentence(question, answer, new DegreeWords(style.Units)), style);
    }

    /// <summary>The timing that is drawn: that of the quickest accepted choice, else the one nearest to the tests'.</summary>
    public static double Timing(GearQuestion question, GearAnswer answer) =>
        answer.Options.Where(o => o.Best is not null).MinBy(o => answer.Gears[o.Best!.Value].LapS.Q50) is { Best: { } best }
            ? answer.Gears[best].Choice.TimingDeg
            : answer.Gears.Select(g => g.Choice.TimingDeg).MinBy(t => Math.Abs(t - question.Rig.Driven.TimingDeg));

    static RaceLimit Nearest(GearQuestion question, GearAnswer answer)
    {
        int[] places = [.. Enumerable.Range(0, question.Demand.Limits.Count).Where(i => question.Demand.Limits[i].Part != LimitedPart.Magnet)];
        return question.Demand.Limits[places.MaxBy(place => answer.Options.Sum(o => o.Gears.Sum(g => g.Odds[place])))];
    }
}
