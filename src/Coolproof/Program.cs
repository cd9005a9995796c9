Console.WriteLine("Coolproof");
