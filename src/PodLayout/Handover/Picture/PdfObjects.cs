using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace PodLayout.Handover.Picture;

/// <summary>The numbered objects of a PDF file (ISO 32000-1, 7.5) and the file made of them.</summary>
internal sealed class PdfObjects
{
    private readonly List<byte[]> objects = [];

    /// <summary>Keeps a number for an object that is put later.</summary>
    public int Reserve()
    {
        objects.Add([]);
        return objects.Count;
    }

    public int Put(string content)
    {
        var number = Reserve();
        Put(number, content);
        return number;
    }

    public void Put(int number, string content) => objects[number - 1] = Encoding.ASCII.GetBytes(content);

    /// <summary>A stream, packed.</summary>
    /// <param name="content">Its bytes.</param>
    /// <param name="entries">What its dictionary says beside length and packing.</param>
    public int PutStream(byte[] content, string entries = "")
    {
        using MemoryStream packed = new();
        using (ZLibStream zip = new(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            zip.Write(content);
        }

        var head = Encoding.ASCII.GetBytes(Text($"<< {entries} /Length {packed.Length} /Filter /FlateDecode >>\nstream\n"));
        var number = Reserve();
        objects[number - 1] = [.. head, .. packed.ToArray(), .. "\nendstream"u8];
        return number;
    }

    /// <summary>The whole file.</summary>
    public byte[] File(int catalogue, int information)
    {
        using MemoryStream file = new();
        file.Write("%PDF-1.7\n%"u8);
        file.Write([0xE2, 0xE3, 0xCF, 0xD3, 0x0A]);
        List<long> offsets = [];
        for (var i = 0; i < objects.Count; i++)
        {
            offsets.Add(file.Position);
            file.Write(Encoding.ASCII.GetBytes(Text($"{i + 1} 0 obj\n")));
            file.Write(objects[i]);
            file.Write("\nendobj\n"u8);
        }

        // The identifier follows from the content: the same card is the same file.
        var id = Convert.ToHexString(SHA256.HashData(file.ToArray()).AsSpan(0, 16));
        var start = file.Position;
        StringBuilder end = new(Text($"xref\n0 {objects.Count + 1}\n0000000000 65535 f \n"));
        foreach (var offset in offsets)
        {
            end.Append(Text($"{offset:0000000000} 00000 n \n"));
        }

        end.Append(Text($"trailer\n<< /Size {objects.Count + 1} /Root {catalogue} 0 R /Info {information} 0 R /ID [<{id}> <{id}>] >>\nstartxref\n{start}\n%%EOF\n"));
        file.Write(Encoding.ASCII.GetBytes(end.ToString()));
        return file.ToArray();
    }

    /// <summary>Text as a string of the document's dictionaries: UTF-16 in hexadecimal digits, so that no character can end it.</summary>
    public static string TextString(string text) => "<FEFF" + Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text)) + ">";

    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
