# Finds what the tests of live sensors need: socat (a pair of connected serial ports) and mosquitto (an MQTT broker), or installs them where the machine's
# own packages carry them. Sourced by ./test after dotnet.sh. Nothing is started here: the tests start and end their own.

has_sensors() { command -v socat >/dev/null && { command -v mosquitto || [[ -x /usr/sbin/mosquitto ]]; } >/dev/null; }

need_sensors() {
    has_sensors && return 0
    say "socat or mosquitto is missing; trying apt-get install socat mosquitto"
    if install_packages socat mosquitto && has_sensors; then return 0; fi
    say "the tests of live sensors need socat and mosquitto, and they can't be had here: apt-get install socat mosquitto"
    return 1
}
