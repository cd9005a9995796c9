using Coolproof.Notebook;

namespace Coolproof.Web;

/// <summary>How a device shows pages: kept on it, in a cookie that scripts may read too.</summary>
/// <param name="Theme">light, dark or sun; empty: as the system says.</param>
/// <param name="Temperature">°C or °F.</param>
/// <param name="Ounces">Ounces instead of grams.</param>
/// <param name="LeftHand">The hand that holds it.</param>
internal sealed record DeviceLook(string Theme, TemperatureUnitChoice Temperature, bool Ounces, bool LeftHand)
{
    /// <summary>Name of the cookie; its value is like "theme=sun&amp;units=f&amp;mass=oz&amp;hand=left".</summary>
    public const string Cookie = "coolproof-look";

    /// <summary>Where nothing was chosen.</summary>
    public static DeviceLook Usual { get; } = new("", TemperatureUnitChoice.Celsius, false, false);

    /// <summary>The look of the device that asks.</summary>
    public static DeviceLook Of(HttpContext? context)
    {
        if (context?.Request.Cookies[Cookie] is not { Length: > 0 } text) return Usual;
        var said = Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(text);
        return new DeviceLook(
            said["theme"].ToString() is "light" or "dark" or "sun" ? said["theme"].ToString() : "",
            said["units"] == "f" ? TemperatureUnitChoice.Fahrenheit : TemperatureUnitChoice.Celsius, said["mass"] == "oz", said["hand"] == "left");
    }

    /// <summary>The cookie's value.</summary>
    public override string ToString() =>
        $"theme={Theme}&units={(Temperature == TemperatureUnitChoice.Fahrenheit ? "f" : "c")}&mass={(Ounces ? "oz" : "g")}&hand={(LeftHand ? "left" : "right")}";
}
