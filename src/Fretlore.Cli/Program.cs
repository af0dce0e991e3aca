using Fretlore.Cli;

return FretloreCommand.Run(args, Surroundings.OfProcess());
