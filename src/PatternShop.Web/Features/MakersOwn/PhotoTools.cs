using PatternShop.Print;

namespace PatternShop.Web;

/// <summary>Makes photos anew, one after another: each may take much memory while it is unpacked.</summary>
internal sealed class PhotoTools : IDisposable
{
    private readonly SemaphoreSlim _one = new(1, 1);

    public async Task<PhotoResult> MakeAsync(Stream file, CancellationToken cancellationToken)
    {
        if (file.Length > PhotoMaker.MostBytes)
        {
            return PhotoMaker.TooManyBytes;
        }

        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancellationToken);
        await _one.WaitAsync(cancellationToken);
        try
        {
            return await Task.Run(() => PhotoMaker.Make(bytes.GetBuffer().AsSpan(0, (int)bytes.Length)), cancellationToken);
        }
        finally
        {
            _one.Release();
        }
    }

    public void Dispose() => _one.Dispose();
}
