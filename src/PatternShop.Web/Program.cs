using PatternShop.Web;

return args is ["render", .. var rest]
    ? await RenderCommand.RunAsync(rest, Console.Out, Console.Error)
    : await PatternShopHost.RunAsync(args);
