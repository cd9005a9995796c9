using Coolproof;
using Coolproof.Commands;

LastStart.Remember(args);
return ThisProcess.Run((terminal, cancel) => CoolproofCommands.Run(args, terminal, cancel));
