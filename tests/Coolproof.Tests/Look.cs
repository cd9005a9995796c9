using Coolproof.Screen; using Coolproof.Words;
namespace Coolproof.Tests;
public class Look { [Fact] public void Print() { foreach (var n in new[]{1,6,40}) foreach (var u in new[]{ShownIn.Celsius, ShownIn.Fahrenheit}) { TestContext.Current.TestOutputHelper!.WriteLine($"---- {n} {u}\n" + string.Join('\n', VerdictPage.Lines(Samples.Of(n), new PageSettings(new DegreeWords(u),100,new Ink(false))))); }
 TestContext.Current.TestOutputHelper!.WriteLine(string.Join('\n', DetailsPage.Lines(Samples.Of(6), new PageSettings(new DegreeWords(ShownIn.Celsius),100,new Ink(false)))));
 TestContext.Current.TestOutputHelper!.WriteLine(Json.CompareJson.Text(Samples.Of(1))); } }
