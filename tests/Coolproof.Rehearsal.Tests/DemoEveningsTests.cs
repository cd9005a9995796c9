using System.Text;
using Coolproof.Notebook;
using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal.Tests;

public class DemoEveningsTests(ITestOutputHelper output)
{
    static readonly (string Name, SimulatedDay Day)[] Demos = [("demo-evenings", DemoEvenings.AllFour()), ("demo-day", DemoEvenings.OneEvening())];

    [Fact]
    public void The_demo_files_are_what_the_generator_makes_of_the_scenario()
    {
        foreach ((string name, SimulatedDay day) in Demos)
        {
            Assert.Equal(Table(day), File.ReadAllText(RepositoryRoot.PathOf("demo", name + ".csv")));
            Assert.Equal(TruthDocument.Of(day).ToJson(), File.ReadAllText(RepositoryRoot.PathOf("demo", name + ".truth.json")));
        }
    }

    [Fact(Explicit = true)]
    public void Write_the_demo_files_anew()
    {
        Directory.CreateDirectory(RepositoryRoot.PathOf("demo"));
        foreach ((string name, SimulatedDay day) in Demos)
        {
            File.WriteAllText(RepositoryRoot.PathOf("demo", name + ".csv"), Table(day));
            File.WriteAllText(RepositoryRoot.PathOf("demo", name + ".truth.json"), TruthDocument.Of(day).ToJson());
        }
    }

    [Fact]
    public void The_demo_tables_are_understood_without_a_question_and_say_that_they_are_made_up()
    {
        foreach ((string name, SimulatedDay day) in Demos)
        {
            TableRead read = ReadingsTableReader.Read(RepositoryRoot.PathOf("demo", name + ".csv"));
            Assert.Empty(read.Problems);
            Assert.Empty(read.Table!.Questions);
            Assert.Equal(6, read.Table.Options.Count);
            Assert.Equal(day.Runs.Count, read.Table.Runs.Count);
            Assert.Contains("made up", read.Table.Runs[0].Readings[0].Note);
        }
    }

    [Fact]
    public void The_single_evening_is_the_first_of_the_four()
    {
        SimulatedDay four = Demos[0].Day, one = Demos[1].Day;
        Assert.Equal(
            one.Runs.SelectMany(r => r.Readings).Select(r => (r.ReadC, r.StopToReadS)),
            four.Runs.Take(one.Runs.Count).SelectMany(r => r.Readings).Select(r => (r.ReadC, r.StopToReadS)));
        Assert.Equal(one.Truth.Peaks(28, 360), four.Truth.Peaks(28, 360));
    }

    [Fact]
    public void The_demo_shows_what_a_racer_would_recognise()
    {
        foreach ((string name, SimulatedDay day) in Demos)
        {
            output.WriteLine(name + ": " + string.Join(", ", day.Truth.Peaks(28, 360).Select(p => $"{p.Option} {p.CanC:f1}/{p.WindingC:f1}")));
            Assert.All(day.Truth.Runs, r => Assert.InRange(r.EndC[(int)Node.Can], 50, 90));
            Assert.All(day.Truth.Runs, r => Assert.InRange(r.AirC, 23, 32));
            Assert.All(day.Runs, r => Assert.InRange(r.Readings.Count, 2, 3));
            Assert.Contains(day.Runs, r => r.Readings[0].StopToReadS is null);
            Assert.All(day.Runs, r => Assert.NotNull(r.StartedAt));
        }
    }

    [Fact]
    public void Every_generated_day_survives_the_table_and_back()
    {
        foreach (SimulatedDay day in SomeDays.All.Take(60))
        {
            TableRead read = ReadingsTableReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(Table(day))));
            Assert.Empty(read.Problems);
            Assert.Equal(day.Runs.Count, read.Table!.Runs.Count);
            foreach ((Run before, Run after) in day.Runs.Zip(read.Table.Runs))
            {
                Assert.Equal(before with { Readings = [], Day = after.Day }, after with { Readings = [] });
                Assert.Equal(before.Readings.Select(r => (r.ReadC, r.StopToReadS, r.Hold)), after.Readings.Select(r => (r.ReadC, r.StopToReadS, r.Hold)));
            }
        }
    }

    [Fact]
    public void A_truth_document_tells_each_options_peak_and_each_runs_fair_values()
    {
        SimulatedDay day = SomeDays.All.First(d => d.Truth.Runs.Any(r => !r.CountsInRanking));
        TruthDocument truth = TruthDocument.Of(day, 30, 300);
        Assert.Equal(new TruthReference(30, 300), truth.Reference);
        Assert.Equal(day.Truth.Peaks(30, 300).Select(p => p.CanC), truth.Options.Select(o => o.PeakCanC));
        Assert.All(truth.Runs, r => Assert.Equal(r.Run.CountsInRanking, r.FairCanC is not null));
        Assert.Contains("\"generator\": 1", truth.ToJson());
    }

    static string Table(SimulatedDay day)
    {
        StringWriter text = new();
        RehearsalFiles.WriteTable(day, text);
        return text.ToString();
    }
}
