using Coolproof.Commands;

return ThisProcess.Run((terminal, cancel) => new CommandLine([("compare", CompareCommand.On)]).Run(args, terminal, cancel));
