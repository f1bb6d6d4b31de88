namespace Dripwright.Sheets.Views;

/// <summary>Room round a view for its dimensions and labels.</summary>
/// <param name="Left">[mm] Left.</param>
/// <param name="Top">[mm] Top.</param>
/// <param name="Right">[mm] Right.</param>
/// <param name="Bottom">[mm] Below.</param>
internal readonly record struct Margins(double Left, double Top, double Right, double Bottom);
