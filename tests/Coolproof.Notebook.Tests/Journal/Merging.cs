using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>Fields, removal, history, and two phones that could not see each other.</summary>
public sealed class Merging
{
    private readonly Taps _taps = new();

    [Fact]
    public void Two_phones_that_edit_different_fields_both_count_and_of_one_field_the_latest()
    {
        _taps.Tap(10, EntryKind.OptionSet, _taps.Option, ("name", "clamp"), ("massG", 38));
        _taps.TapOn(_taps.Clock, 20, EntryKind.OptionSet, _taps.Option, ("price", 9.5));
        _taps.TapOn(_taps.Clock, 5, EntryKind.OptionSet, _taps.Option, ("name", "older name"));
        NotedOption option = _taps.Notebook.Options.Single();
        Assert.Equal(("clamp", 38.0, 9.5), (option.Name, option.MassG, option.Price));
    }

    [Fact]
    public void Null_clears_a_field_and_undo_brings_its_value_back()
    {
        _taps.Tap(10, EntryKind.OptionSet, _taps.Option, ("name", "clamp"), ("massG", 38));
        Guid cleared = _taps.Tap(20, EntryKind.OptionSet, _taps.Option, ("massG", null));
        Assert.Null(_taps.Notebook.Options.Single().MassG);
        _taps.Undo(30, cleared);
        Assert.Equal(38, _taps.Notebook.Options.Single().MassG);
    }

    [Fact]
    public void Parts_add_up_to_their_options_price_and_mass()
    {
        _taps.Tap(0, EntryKind.OptionSet, _taps.Option, ("name", "fan"), ("price", 1), ("massG", 1));
        _taps.Tap(1, EntryKind.PartSet, Taps.Id(50), ("option", _taps.Option), ("name", "fan 25 mm"), ("price", 7.5), ("massG", 9));
        _taps.Tap(2, EntryKind.PartSet, Taps.Id(51), ("option", _taps.Option), ("name", "clamp"), ("price", 6), ("massG", 30.5));
        Assert.Equal((13.5, 39.5), (_taps.Notebook.Options.Single().Price, _taps.Notebook.Options.Single().MassG));
        _taps.Tap(3, EntryKind.PartSet, Taps.Id(51), ("option", Taps.Id(52)));
        Assert.Equal(7.5, _taps.Notebook.Options.Single().Price);
    }

    [Fact]
    public void What_is_removed_leaves_the_lists_and_undo_brings_it_back()
    {
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"));
        Guid run = _taps.Begin(1);
        Guid shot = _taps.Shoot(20, run, 60);
        Guid gone = _taps.Tap(30, EntryKind.Remove, shot);
        Assert.Empty(_taps.Notebook.Find<NotedRun>(run)!.Shots);
        Guid day = _taps.Tap(40, EntryKind.Remove, _taps.Day);
        Assert.Empty(_taps.Notebook.Days);
        Assert.Empty(_taps.Notebook.Runs);
        Assert.True(_taps.Notebook.Find<NotedDay>(_taps.Day)!.Removed);
        _taps.Undo(50, day);
        _taps.Undo(51, gone);
        Assert.Single(_taps.Notebook.Runs.Single().Shots);
    }

    [Fact]
    public void History_tells_what_was_said_when_by_whom_and_what_it_changed()
    {
        Guid first = _taps.Tap(10, EntryKind.OptionSet, _taps.Option, ("name", "clamp"), ("massG", 38));
        Guid second = _taps.TapOn(_taps.Clock, 20, EntryKind.OptionSet, _taps.Option, ("massG", 40));
        Guid undo = _taps.Undo(30, second);
        IReadOnlyList<HistoryLine> history = _taps.Notebook.History(_taps.Option);
        Assert.Equal([first, second, undo], history.Select(line => line.Stored.Id));
        Assert.Equal([true, false, true], history.Select(line => line.Stands));
        Assert.Equal(EntryBody.Of(("massG", 38)), history[1].Before);
        Assert.Equal((_taps.Clock, Taps.At(20), (Guid?)second), (history[1].Stored.Device, history[1].Said, history[2].Corrected));
    }

    [Fact]
    public void History_of_a_run_tells_of_its_shots_too()
    {
        Guid run = _taps.Begin(0);
        _taps.Shoot(10, run, 60);
        Assert.Equal([EntryKind.RunBegin, EntryKind.Shot, EntryKind.ShotRead], _taps.Notebook.History(run).Select(line => line.Stored.Entry.Kind));
    }

    [Fact]
    public void Two_phones_that_both_began_run_five_are_offered_as_one_or_two()
    {
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"));
        Guid a = _taps.Begin(1, 5);
        Guid b = _taps.Begin(2, 5, _taps.Clock);
        SameRunOffer offer = _taps.Notebook.Offers(_taps.Day).Single();
        Assert.Equal((5, a, b), (offer.Number, offer.A, offer.B));
        Assert.Contains(LooseEnds.Of(_taps.Notebook, _taps.Notebook.Days.Single(), Taps.At(3)), end => end.Kind == LooseEndKind.SameOrTwo);
        _taps.Tap(10, EntryKind.RunTwo, a, ("other", b));
        Assert.Empty(_taps.Notebook.Offers(_taps.Day));
        Assert.Equal(2, _taps.Notebook.Runs.Count);
    }

    [Fact]
    public void Runs_declared_the_same_are_one_run_with_the_stamps_and_shots_of_both()
    {
        Guid a = _taps.Begin(1, 5);
        Guid b = _taps.Begin(2, 5, _taps.Clock);
        _taps.Tap(10, EntryKind.RunGo, a);
        _taps.TapOn(_taps.Clock, 10.5, EntryKind.RunGo, b);
        _taps.TapOn(_taps.Clock, 370, EntryKind.RunStop, b);
        _taps.Shoot(390, a, 60);
        _taps.Shoot(395, b, 59);
        Guid same = _taps.TapOn(_taps.Clock, 400, EntryKind.RunSame, b, ("other", a));
        NotedRun one = _taps.Notebook.Runs.Single();
        Assert.Equal((a, b), (one.Id, one.OtherIds.Single()));
        Assert.Equal((2, 0.5, 360.0), (one.Shots.Count, one.Go!.SpreadS, one.DriveS));
        Assert.Equal(one.Id, _taps.Notebook.Find<NotedRun>(b)!.Id);
        Guid two = _taps.Tap(410, EntryKind.RunTwo, a, ("other", b));
        Assert.Equal(2, _taps.Notebook.Runs.Count);
        _taps.Undo(420, two);
        Assert.Single(_taps.Notebook.Runs);
        _taps.Undo(430, same);
        Assert.Equal(2, _taps.Notebook.Runs.Count);
        Assert.Single(_taps.Notebook.Offers(_taps.Day));
    }

    [Fact]
    public void What_came_before_the_thing_that_it_speaks_of_waits_for_it()
    {
        Guid run = _taps.Begin(0);
        Guid go = _taps.Tap(1, EntryKind.RunGo, run);
        Guid undo = _taps.Undo(2, go);
        _taps.Undo(3, undo);
        _taps.Nudge(4, go, 2);
        _taps.Shoot(10, run, 60);
        NotebookFold fold = new();
        foreach (StoredEntry entry in _taps.All.Reverse()) fold.Add([entry]);
        NotedRun noted = fold.Notebook.Runs.Single();
        Assert.Equal((Taps.At(3), 60.0), (noted.Go!.At, noted.Shots.Single().ReadC));
    }

    [Fact]
    public void Undos_in_a_circle_count_for_nothing()
    {
        Guid run = _taps.Begin(0);
        Guid a = Taps.Id(500), b = Taps.Id(501);
        StoredEntry Undo(Guid id, Guid of) => new(new Entry(id, EntryKind.Undo, Taps.At(1), run, null, EntryBody.Of(("of", of))), _taps.Driver, 0, Taps.At(1));
        PitNotebook notebook = PitNotebook.Of([.. _taps.All, Undo(a, b), Undo(b, a), Undo(Taps.Id(502), a)]);
        Assert.Single(notebook.Runs);
    }

    [Fact]
    public void One_id_with_two_contents_gives_the_same_notebook_in_either_order()
    {
        StoredEntry Named(string name) => new(new Entry(Taps.Id(500), EntryKind.OptionSet, Taps.At(1), _taps.Option, null, EntryBody.Of(("name", name))), _taps.Driver, 1, Taps.At(1));
        PitNotebook ab = PitNotebook.Of([Named("a"), Named("b")]), ba = PitNotebook.Of([Named("b"), Named("a")]);
        Assert.Equal(ab.Options.Single(), ba.Options.Single() with { Parts = ab.Options.Single().Parts });
        Assert.Equal(1, ab.Entries);
    }

    [Fact]
    public void Settings_are_one_set_whatever_they_speak_of()
    {
        _taps.Tap(0, EntryKind.SettingSet, Taps.Id(60), ("temperatureUnit", "f"), ("hornVolume", 0.5));
        _taps.TapOn(_taps.Clock, 1, EntryKind.SettingSet, Taps.Id(61), ("massUnit", "oz"));
        NotedSettings settings = _taps.Notebook.Settings;
        Assert.Equal((TemperatureUnitChoice.Fahrenheit, MassUnitChoice.Ounce, 0.5), (settings.TemperatureUnit, settings.MassUnit, settings.Fields.Number("hornVolume")));
    }

    [Fact]
    public void Photos_checks_weather_and_coolings_are_found_where_they_belong()
    {
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"), ("date", "2026-06-13"), ("utcOffsetMin", 120));
        _taps.Tap(1, EntryKind.InstrumentSet, _taps.Gun, ("name", "gun"), ("emissivity", 0.95));
        _taps.Tap(2, EntryKind.GunCheckSet, Taps.Id(70), ("instrument", _taps.Gun), ("way", "ice"), ("readC", 0.5), ("trueC", 0));
        _taps.Tap(3, EntryKind.Photo, Taps.Id(71), ("about", _taps.Option), ("type", "image/jpeg"), ("bytes", 1000), ("width", 10), ("height", 10));
        _taps.Tap(4, EntryKind.Weather, _taps.Day, ("day", _taps.Day), ("airC", 27.5), ("sky", "sun"));
        Guid run = _taps.Begin(5);
        _taps.Tap(6, EntryKind.CoolDownBegin, Taps.Id(72), ("run", run), ("way", "pit-fan"));
        _taps.Tap(600, EntryKind.CoolDownEnd, Taps.Id(72));
        PitNotebook notebook = _taps.Notebook;
        Assert.Equal(0.5, notebook.Instruments.Single().Checks.Single().ReadC);
        Assert.Equal(Taps.Id(71), notebook.PhotosOf(_taps.Option).Single().Id);
        Assert.Equal((27.5, Sky.Sun), (notebook.Days.Single().Weather.Single().AirC, notebook.Days.Single().Weather.Single().Sky!.Value));
        Assert.Equal(Duration.FromSeconds(594), notebook.Runs.Single().CoolDowns.Single().End!.Value - notebook.Runs.Single().CoolDowns.Single().Begin);
        Assert.Equal(new LocalDate(2026, 6, 13), notebook.Days.Single().Date);
    }
}
