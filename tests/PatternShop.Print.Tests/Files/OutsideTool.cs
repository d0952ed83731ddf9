using System.Diagnostics;

namespace PatternShop.Print.Tests;

/// <summary>Programs of others that read what we write; the test command says where they are.</summary>
internal static class OutsideTool
{
    /// <summary>What a program says of a file: all it prints, and its exit code.</summary>
    public static (string Said, int Code) Run(string variable, string name, byte[] file, params string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("patternshop-");
        try
        {
            var path = Path.Combine(folder.FullName, "file.pdf");
            File.WriteAllBytes(path, file);
            var start = new ProcessStartInfo(Environment.GetEnvironmentVariable(variable) ?? name)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            foreach (var argument in arguments)
            {
                start.ArgumentList.Add(argument == "FILE" ? path : argument);
            }

            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var said = process.StandardOutput.ReadToEnd() + errors.GetAwaiter().GetResult();
            process.WaitForExit();
            return (said.Replace(path, "FILE", StringComparison.Ordinal), process.ExitCode);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
