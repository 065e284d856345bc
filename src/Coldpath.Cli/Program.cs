using Coldpath.Cli;

using var outside = Outside.OfThisProcess();
return (int)CommandLine.Run(args, outside);
