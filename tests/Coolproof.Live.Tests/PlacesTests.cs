using Coolproof.Live.Sources;

namespace Coolproof.Live.Tests;

/// <summary>Sources as they are typed.</summary>
public class PlacesTests
{
    [Theory]
    [InlineData("/dev/ttyUSB0", "/dev/ttyUSB0", 115_200)]
    [InlineData("/dev/ttyACM1@9600", "/dev/ttyACM1", 9600)]
    [InlineData("/tmp/a@b/port@57600", "/tmp/a@b/port", 57_600)]
    public void A_serial_port_is_a_device_and_a_speed(string typed, string device, int baud) => Assert.Equal(new SerialPlace(device, baud), SerialPlace.Of(typed).Place);

    [Theory]
    [InlineData("ttyUSB0")]
    [InlineData("/dev/")]
    [InlineData("/dev/ttyUSB0@fast")]
    [InlineData("/dev/ttyUSB0@12")]
    [InlineData("")]
    public void What_is_no_serial_port_says_what_would_be_one(string typed) => Assert.Contains("/dev/ttyUSB0@115200", SerialPlace.Of(typed).Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData("pit.local/bench/#", "pit.local", 1883, "bench/#", null)]
    [InlineData("192.168.1.5:1884/+/can", "192.168.1.5", 1884, "+/can", null)]
    [InlineData("kim@pit:1883/a", "pit", 1883, "a", "kim")]
    [InlineData("[::1]/a", "[::1]", 1883, "a", null)]
    public void Topics_of_a_broker_are_a_host_a_port_and_a_topic(string typed, string host, int port, string topic, string? user) => Assert.Equal(new MqttPlace(host, port, topic, user), MqttPlace.Of(typed).Place);

    [Theory]
    [InlineData("pit.local", "names no topic")]
    [InlineData("mqtt://pit/a", "names no topic")]
    [InlineData("pit:0/a", "no port")]
    [InlineData("pit:x/a", "no port")]
    [InlineData("pit/", "1 to 1000")]
    [InlineData("pit/a/#/b", "last level")] // MQTT 3.1.1, 4.7.1.2: "sport/tennis/#/ranking" is not valid
    [InlineData("pit/a#", "last level")] // the same: "sport/tennis#" is not valid
    [InlineData("pit/a+", "whole level")] // 4.7.1.3: "sport+" is not valid
    [InlineData("kim:secret@pit/a", "COOLPROOF_MQTT_PASSWORD")]
    [InlineData("@pit/a", "no broker")]
    public void What_is_no_topic_of_a_broker_says_why(string typed, string says)
    {
        Assert.Contains(says, MqttPlace.Of(typed).Problem, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", MqttPlace.Of(typed).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Attempts_become_rarer_up_to_every_eight_seconds_and_begin_anew_once_one_worked()
    {
        var backoff = new Backoff();
        Assert.Equal([0.5, 1, 2, 4, 8, 8], Enumerable.Range(0, 6).Select(_ => backoff.Next().TotalSeconds));
        backoff.Reset();
        Assert.Equal(0.5, backoff.Next().TotalSeconds);
    }
}
