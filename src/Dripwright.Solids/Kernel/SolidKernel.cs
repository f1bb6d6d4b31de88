using Dripwright.Engine.Printed.Shapes;
using Microsoft.ClearScript;
using Microsoft.ClearScript.JavaScript;
using Microsoft.ClearScript.V8;

namespace Dripwright.Solids;

/// <summary>Evaluates descriptions of solids to closed triangle meshes.</summary>
/// <remarks>
/// The geometry is done by manifold-3d 3.5.4, a kernel in WebAssembly, run inside the V8 engine. Starting it takes about a
/// quarter of a second, so it is started once and shared. Calls may come from several threads; they are done one by one.
/// </remarks>
public sealed class SolidKernel : IDisposable
{
    /// <summary>[mm] Shorter edges are drawn together: no printer shows them, and single-precision files could not tell
    /// their ends apart.</summary>
    private const double SmallestEdge = 0.001;

    private static readonly Lazy<SolidKernel> s_sharedKernel = new(() => new SolidKernel());

    private readonly V8ScriptEngine _engine;
    private readonly ScriptObject _build;
    private readonly Lock _lock = new();

    /// <summary>Starts a kernel of its own; most callers want <see cref="Shared"/>.</summary>
    /// <exception cref="SolidsMissingException">Its library is not there for this machine.</exception>
    /// <exception cref="InvalidOperationException">The kernel does not start on this machine.</exception>
    public SolidKernel()
    {
        try
        {
            _engine = new V8ScriptEngine(V8ScriptEngineFlags.EnableTaskPromiseConversion);
        }
        catch (Exception missing)
            when (missing
                    is TypeLoadException
                        or DllNotFoundException
                        or TypeInitializationException
                        or BadImageFormatException
            )
        {
            throw new SolidsMissingException(missing.Message, missing);
        }

        // The kernel's loader expects a console.
        _engine.Execute("globalThis.console = { log() {}, warn() {}, error() {} };");
        _engine.DocumentSettings.AddSystemDocument("manifold.js", ModuleCategory.Standard, Text("manifold.js"));
        _engine.Execute(new DocumentInfo("build.js") { Category = ModuleCategory.Standard }, Text("build.js"));
        var wasm = Bytes("manifold.wasm");
        var buffer = (IArrayBuffer)_engine.Evaluate($"new ArrayBuffer({Number.Of(wasm.Length)})");
        buffer.WriteBytes(wasm, 0, (ulong)wasm.Length, 0);
        _engine.Script.startKernel(buffer);
        if (!(bool)_engine.Script.kernelReady())
        {
            throw new InvalidOperationException("The geometry kernel did not start.");
        }

        _build = (ScriptObject)_engine.Script.buildMesh;
    }

    /// <summary>The kernel that all share.</summary>
    /// <exception cref="SolidsMissingException">Its library is not there for this machine.</exception>
    public static SolidKernel Shared => s_sharedKernel.Value;

    /// <summary>The mesh of a solid.</summary>
    /// <param name="solid">Its description.</param>
    /// <returns>A closed mesh in mm, its triangles counter-clockwise from outside.</returns>
    /// <exception cref="ArgumentException">The description gives no solid, or one that is not closed.</exception>
    public SolidMesh MeshOf(Solid solid)
    {
        var text = SolidText.Of(solid);
        lock (_lock)
        {
            var result = (ScriptObject)_build.InvokeAsFunction(text, SmallestEdge);
            var places = ((ITypedArray<float>)result["places"]).ToArray();
            var corners = ((ITypedArray<uint>)result["triangles"]).ToArray();
            if (result["status"] as string != "NoError" || corners.Length == 0)
            {
                throw new ArgumentException($"The description gives no solid ({result["status"]}).", nameof(solid));
            }

            return SolidMesh.From(places, corners);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _engine.Dispose();

    private static string Text(string name)
    {
        using var reader = new StreamReader(Resource(name));
        return reader.ReadToEnd();
    }

    private static byte[] Bytes(string name)
    {
        using var stream = Resource(name);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static Stream Resource(string name) => typeof(SolidKernel).Assembly.GetManifestResourceStream(name)!;
}
