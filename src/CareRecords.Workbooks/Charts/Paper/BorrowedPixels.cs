using System.Buffers;
using System.Runtime.InteropServices;
using SkiaSharp;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>
/// The pixels of a picture, in memory that the next picture uses again: a picture's seven megabytes are touched for the first time otherwise, which
/// was a sixteenth of a month's processor time.
/// </summary>
internal sealed class BorrowedPixels : IDisposable
{
    private readonly byte[] _bytes;
    private readonly GCHandle _held;

    public BorrowedPixels(int wide, int high)
    {
        var info = new SKImageInfo(wide, high, SKColorType.Rgba8888, SKAlphaType.Opaque);
        _bytes = ArrayPool<byte>.Shared.Rent(info.BytesSize);
        _held = GCHandle.Alloc(_bytes, GCHandleType.Pinned);
        Pixmap = new SKPixmap(info, _held.AddrOfPinnedObject(), info.RowBytes);
    }

    public SKPixmap Pixmap { get; }

    public void Dispose()
    {
        Pixmap.Dispose();
        _held.Free();
        ArrayPool<byte>.Shared.Return(_bytes);
    }
}
