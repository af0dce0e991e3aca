using BenchmarkDotNet.Running;
using Fretlore.Bench;

switch (args)
{
    case ["--quick"]:
        return QuickLook.Print(Console.Out);
    case ["--reading"]:
        return ReadingLook.Print(Console.Out);
    case ["--sound"]:
        return SoundLook.Print(Console.Out);
    case ["--exchange"]:
        return ExchangeLook.Print(Console.Out);
    case ["--pages"]:
        return PagesLook.Print(Console.Out);
    case ["--kit"]:
        return KitLook.Print(Console.Out);
    case ["--hands"]:
        return HandsLook.Print(Console.Out);
    case ["--roadmaps"]:
        return RoadMapLook.Print(Console.Out, 100);
    case ["--roadmaps", var number] when int.TryParse(number, out var takes) && takes > 0:
        return RoadMapLook.Print(Console.Out, takes);
    case ["--sheet", var bars] when int.TryParse(bars, out var count) && count > 0 && count % 8 == 0:
        Console.Out.Write(GeneratedSong.Sheet(count));
        return 0;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(StageBenchmarks).Assembly).Run(args);
        return 0;
}
