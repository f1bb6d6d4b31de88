using Dripwright.Language;
using Dripwright.Store.Ground;

namespace Dripwright.Workbench.Household;

/// <summary>The people of a garden in one small file of the data folder, read and changed by this program and by its commands.</summary>
internal sealed class PeopleFile
{
    public const string FileName = "people.json";

    // A file system's clock may tick this coarsely: of a file changed just now one cannot tell whether it changed again.
    private static readonly TimeSpan s_tick = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(10);

    private readonly Lock _turn = new();
    private readonly string _path;
    private readonly TimeProvider _time;
    private IReadOnlyList<Person> _all = [];
    private (DateTime Written, long Length, DateTime Read) _look;

    /// <summary>Opens the file; nobody where there is none.</summary>
    /// <exception cref="GardenException">It is spoilt.</exception>
    public PeopleFile(string folder, TimeProvider time)
    {
        _path = Path.Combine(folder, FileName);
        _time = time;
        Refresh();
    }

    /// <summary>Everybody as the file says just now. While it is spoilt: as it said before.</summary>
    public IReadOnlyList<Person> All
    {
        get
        {
            lock (_turn)
            {
                try
                {
                    Refresh();
                }
                catch (Exception wrong) when (wrong is GardenException or IOException or UnauthorizedAccessException)
                {
                    // An editor may be half-way through writing it. What is changed meanwhile is refused below.
                }

                return _all;
            }
        }
    }

    /// <summary>Changes it. Others that do so wait, in this program and outside.</summary>
    /// <param name="change">Gives what it should say; null to leave it.</param>
    /// <exception cref="GardenException">It is spoilt, or cannot be written.</exception>
    public void Change(Func<IReadOnlyList<Person>, IReadOnlyList<Person>?> change)
    {
        lock (_turn)
        {
            try
            {
                using var alone = Alone();
                Refresh();
                if (change(_all) is not { } changed)
                {
                    return;
                }

                OwnFile.Replace(_path, PeopleText.Write(changed));
                (_all, _look) = (changed, Look());
            }
            catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
            {
                throw new GardenException(
                    TroubleKind.NotWritable,
                    Words.Of("people.file.unwritten", _path, SystemReason.Of(wrong)),
                    wrong,
                    Words.Of("people.file.unwritten.page")
                );
            }
        }
    }

    private void Refresh()
    {
        var look = Look();
        if (look.Written == _look.Written && look.Length == _look.Length && _look.Read - _look.Written > s_tick)
        {
            return;
        }

        if (look.Length < 0)
        {
            (_all, _look) = ([], look);
            return;
        }

        _all = PeopleText.Read(File.ReadAllBytes(_path), _path, _time.GetUtcNow());
        _look = look;
    }

    private (DateTime Written, long Length, DateTime Read) Look()
    {
        var file = new FileInfo(_path);
        // The machine's own clock, against which the file system's times stand.
        return file.Exists
            ? (file.LastWriteTimeUtc, file.Length, DateTime.UtcNow)
            : (DateTime.MinValue, -1, DateTime.UtcNow);
    }

    private FileStream Alone()
    {
        var since = Environment.TickCount64;
        while (true)
        {
            try
            {
                return OwnFile.Open(_path + ".lock", FileMode.OpenOrCreate, FileShare.None);
            }
            catch (IOException) when (Environment.TickCount64 - since < s_patience.TotalMilliseconds && HasFolder())
            {
                Thread.Sleep(20);
            }
        }
    }

    private bool HasFolder() => Directory.Exists(Path.GetDirectoryName(_path));
}
