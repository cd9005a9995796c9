using System.Globalization;
using Coolproof.Bench.Day;

// One step of bench/peers/run a call; what it prints for the next step is tab-separated.
switch (args)
{
    case ["table", string table, string evenings]:
        BenchTable.Write(table, int.Parse(evenings));
        return 0;
    case ["data", string table, string coordinates, string json]:
        StanData.Write(DayTask.Of(table, coordinates).Model, json);
        return 0;
    case ["points", string table, string coordinates, string positions, string densities]:
        DensityPoints.Write(DayTask.Of(table, coordinates), positions, densities);
        return 0;
    case ["same", string own, string peers]:
        return DensityPoints.Compare(own, peers);
    case ["sample", string table, string seeds, string folder]:
        OwnSampling.Run(table, int.Parse(seeds), folder);
        return 0;
    case ["sizes", .. string[] files]:
        SampleSizes.Print(files);
        return 0;
    case ["agree", string own, string peers]:
        return SampleSizes.Agree(own, peers);
    case ["growth", string table, string limit]:
        Growth.Print(table, double.Parse(limit, CultureInfo.InvariantCulture));
        return 0;
    default:
        Console.Error.WriteLine("usage: table FILE EVENINGS | data TABLE plain|levelled JSON | points TABLE plain|levelled POSITIONS DENSITIES | same OWN PEER"
            + " | sample TABLE SEEDS FOLDER | sizes DRAWS... | agree OWN PEER | growth TABLE SECONDS");
        return 2;
}
