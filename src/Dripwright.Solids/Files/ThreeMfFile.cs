using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Dripwright.Solids.Files;

/// <summary>A part in a 3MF file.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Mesh">Its mesh.</param>
public sealed record ThreeMfPart(string Name, SolidMesh Mesh);

/// <summary>3MF, core specification 1.4: a zip with three parts, in millimetres. The same parts give the same bytes.</summary>
public static class ThreeMfFile
{
    private const string Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private const string ModelPath = "3D/3dmodel.model";

    /// <summary>Zip files must carry a time; this one, the first that they know, says nothing.</summary>
    private static readonly DateTimeOffset s_noTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes one or more parts, each an object on its own.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="title">Title in the file's metadata.</param>
    /// <param name="target">Stream to write to; stays open.</param>
    public static void Write(IReadOnlyList<ThreeMfPart> parts, string title, Stream target)
    {
        using var zip = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true);
        Entry(
            zip,
            "[Content_Types].xml",
            writer =>
            {
                writer.WriteStartElement("Types", "http://schemas.openxmlformats.org/package/2006/content-types");
                Default(writer, "rels", "application/vnd.openxmlformats-package.relationships+xml");
                Default(writer, "model", "application/vnd.ms-package.3dmanufacturing-3dmodel+xml");
                writer.WriteEndElement();
            }
        );
        Entry(
            zip,
            "_rels/.rels",
            writer =>
            {
                writer.WriteStartElement(
                    "Relationships",
                    "http://schemas.openxmlformats.org/package/2006/relationships"
                );
                writer.WriteStartElement("Relationship");
                writer.WriteAttributeString("Target", $"/{ModelPath}");
                writer.WriteAttributeString("Id", "rel0");
                writer.WriteAttributeString("Type", "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel");
                writer.WriteEndElement();
                writer.WriteEndElement();
            }
        );
        Entry(zip, ModelPath, writer => Model(writer, parts, title));
    }

    /// <summary>Reads parts that <see cref="Write"/> wrote.</summary>
    /// <param name="source">Stream to read from, one that can seek.</param>
    /// <exception cref="InvalidDataException">The stream holds no such file, or one in another unit.</exception>
    public static IReadOnlyList<ThreeMfPart> Read(Stream source)
    {
        using var zip = new ZipArchive(source, ZipArchiveMode.Read, leaveOpen: true);
        var entry = zip.GetEntry(ModelPath) ?? throw new InvalidDataException("There is no model in it.");
        using var stream = entry.Open();
        var model = XDocument.Load(stream).Root!;
        if ((string?)model.Attribute("unit") is not (null or "millimeter"))
        {
            throw new InvalidDataException("Only models in millimetres are read.");
        }

        return
        [
            .. model
                .Descendants(XName.Get("object", Core))
                .Select(part => new ThreeMfPart(
                    (string?)part.Attribute("name") ?? "",
                    new(
                        [
                            .. part.Descendants(XName.Get("vertex", Core))
                                .Select(v => new MeshPoint(Real(v, "x"), Real(v, "y"), Real(v, "z"))),
                        ],
                        [
                            .. part.Descendants(XName.Get("triangle", Core))
                                .Select(t => new MeshTriangle(
                                    (int)Real(t, "v1"),
                                    (int)Real(t, "v2"),
                                    (int)Real(t, "v3")
                                )),
                        ]
                    )
                )),
        ];
    }

    private static float Real(XElement element, string name) =>
        float.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static void Model(XmlWriter writer, IReadOnlyList<ThreeMfPart> parts, string title)
    {
        writer.WriteStartElement("model", Core);
        writer.WriteAttributeString("unit", "millimeter");
        writer.WriteAttributeString("xml", "lang", null, "en-US");
        writer.WriteStartElement("metadata", Core);
        writer.WriteAttributeString("name", "Title");
        writer.WriteString(title);
        writer.WriteEndElement();
        writer.WriteStartElement("resources", Core);
        for (var i = 0; i < parts.Count; i++)
        {
            Part(writer, i + 1, parts[i]);
        }

        writer.WriteEndElement();
        writer.WriteStartElement("build", Core);
        for (var i = 0; i < parts.Count; i++)
        {
            writer.WriteStartElement("item", Core);
            writer.WriteAttributeString("objectid", Number.Of(i + 1));
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static void Part(XmlWriter writer, int id, ThreeMfPart part)
    {
        writer.WriteStartElement("object", Core);
        writer.WriteAttributeString("id", Number.Of(id));
        writer.WriteAttributeString("type", "model");
        writer.WriteAttributeString("name", part.Name);
        writer.WriteStartElement("mesh", Core);
        writer.WriteStartElement("vertices", Core);
        foreach (var p in part.Mesh.Points)
        {
            writer.WriteStartElement("vertex", Core);
            writer.WriteAttributeString("x", Number.Of(p.X));
            writer.WriteAttributeString("y", Number.Of(p.Y));
            writer.WriteAttributeString("z", Number.Of(p.Z));
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        writer.WriteStartElement("triangles", Core);
        foreach (var t in part.Mesh.Triangles)
        {
            writer.WriteStartElement("triangle", Core);
            writer.WriteAttributeString("v1", Number.Of(t.A));
            writer.WriteAttributeString("v2", Number.Of(t.B));
            writer.WriteAttributeString("v3", Number.Of(t.C));
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static void Default(XmlWriter writer, string extension, string type)
    {
        writer.WriteStartElement("Default");
        writer.WriteAttributeString("Extension", extension);
        writer.WriteAttributeString("ContentType", type);
        writer.WriteEndElement();
    }

    private static void Entry(ZipArchive zip, string name, Action<XmlWriter> write)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
        entry.LastWriteTime = s_noTime;
        using var stream = entry.Open();
        using var writer = XmlWriter.Create(
            stream,
            new XmlWriterSettings
            {
                Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
                NewLineChars = "\n",
            }
        );
        writer.WriteStartDocument();
        write(writer);
        writer.WriteEndDocument();
    }
}
