using System.CommandLine;
using System.Globalization;
using System.Text;
using PodLayout.Air;
using PodLayout.Schemas;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.Cli;

/// <summary><c>shop</c> and <c>schema</c>: the files that people write.</summary>
internal static class ShopCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string?> input = new("FILE")
        {
            Description = "A shop file to check. Without it, the built-in shop is printed, to start your own file from.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Command command = new("shop", "Checks a shop file and prints what it holds, or prints the built-in shop.") { input };
        command.SetAction(parsed => run(cancellation => Interruptible.Run(() =>
        {
            if (parsed.GetValue(input) is not { } path)
            {
                terminal.Out.Write(Encoding.UTF8.GetString(ShopReading.DefaultText()));
                return ExitCodes.LayoutFound;
            }

            var shop = InputFile.Read(path).Then(content => ShopReading.Read(path, content));
            if (!shop.Succeeded)
            {
                return terminal.Refuse(shop.Findings);
            }

            terminal.Print(shop.Findings);
            terminal.Out.Write(Said(shop.Value));
            return ExitCodes.LayoutFound;
        }, cancellation)));
        return command;
    }

    public static Command MakeSchema(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> which = new("FORM") { Description = "shop or job." };
        which.AcceptOnlyFromAmong("shop", "job");
        Command command = new("schema", "Prints the JSON Schema of shop.json or job.json.") { which };
        command.SetAction(parsed => run(_ =>
        {
            terminal.Out.Write(parsed.GetRequiredValue(which) == "shop" ? PublishedSchemas.Shop : PublishedSchemas.Job);
            return ExitCodes.LayoutFound;
        }));
        return command;
    }

    private static string Said(Shop shop)
    {
        StringBuilder text = new();
        var board = shop.Board;
        var working = board.Ports.Count(p => p.State == PortState.Working);
        Line($"{shop.Name}: {board.Name}");
        Line($"Board {board.WidthMm:0.###} x {board.LengthMm:0.###} mm, pitch {board.PitchMm:0.###} mm, grooves {board.GrooveWidthMm:0.###} mm wide, first crossing at ({board.FirstGroove.X:0.###}, {board.FirstGroove.Y:0.###})");
        Line($"Usable from ({board.UsableArea.MinX:0.###}, {board.UsableArea.MinY:0.###}) to ({board.UsableArea.MaxX:0.###}, {board.UsableArea.MaxY:0.###}) mm");
        Line($"{board.Ports.Length} ports, {working} of them working; {board.Obstacles.Length} pins, stops and damaged spots");
        foreach (var pod in shop.Pods)
        {
            Line($"Pod {pod.Name}: {pod.Footprint.ExtentXMm:0.###} x {pod.Footprint.ExtentYMm:0.###} mm{(pod.Footprint is PodFootprint.Round ? ", round" : "")}, {pod.Stock} in stock");
        }

        var (supply, holding) = (shop.Vacuum, shop.Holding);
        Line($"Vacuum: {(supply.Source switch
        {
            VacuumSource.Reading reading => Invariant($"gauge {reading.GaugeKPa:0.#} kPa ({reading.GaugeKPa / PressureUnits.InHgKPa:0.#} inHg)"),
            VacuumSource.Pump pump => Invariant($"pump of {pump.Curve[0].FreeAirM3PerHour:0.#} m3/h of free air, {pump.Curve[^1].VacuumKPa:0.#} kPa ({pump.Curve[^1].VacuumKPa / PressureUnits.InHgKPa:0.#} inHg) at no flow"),
            _ => "",
        })}, air pressure {supply.BarometerKPa:0.#} kPa");
        Line($"Leak past seals {supply.Leak.SealLPerMinPerM:0.###} l/min for each metre ({supply.RoughSealLPerMinPerM:0.###} on a rough underside); channels {supply.Channels.WidthMm:0.###} x {supply.Channels.DepthMm:0.###} mm");
        Line($"Holding: target factor {holding.TargetFactor:0.###}, least {holding.LeastFactor:0.###}, friction {holding.Friction:0.###}");
        foreach (var assumed in supply.Assumptions)
        {
            text.Append("Assumed: ").Append(assumed).Append('\n');
        }

        return text.ToString();

        static string Invariant(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }
}
