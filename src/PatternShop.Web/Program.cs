using PatternShop.Web;

return await CommandLine.RunAsync(args, Console.In, Console.Out, Console.Error);
