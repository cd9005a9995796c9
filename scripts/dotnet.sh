# Finds the .NET 10 SDK, or installs it where the machine's own packages carry it. Sourced by ./coolproof and ./test.
# Sets DOTNET to the command. Says on standard error what it does. Returns 1 when there is no SDK and none can be had.

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1

say() { printf '%s\n' "coolproof: $*" >&2; }

# The first dotnet on this machine, whether or not it is on the PATH.
find_dotnet() {
    local candidate
    for candidate in "$(command -v dotnet || true)" "${DOTNET_ROOT:-}/dotnet" "$HOME/.dotnet/dotnet" \
        /usr/share/dotnet/dotnet /usr/lib/dotnet/dotnet /opt/dotnet/dotnet; do
        if [[ -n $candidate && -x $candidate ]]; then
            DOTNET=$candidate
            return 0
        fi
    done
    return 1
}

has_sdk() { find_dotnet && "$DOTNET" --list-sdks 2>/dev/null | grep -q '^10\.'; }

as_root() {
    if [[ $(id -u) -eq 0 ]]; then "$@"; elif command -v sudo >/dev/null; then sudo -n "$@"; else return 1; fi
}

# Those packages and what they can't run without, from the machine's own package sources.
install_packages() {
    command -v apt-get >/dev/null && as_root apt-get update -qq >&2 &&
        as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >&2
}

need_sdk() {
    has_sdk && return 0
    say "the .NET 10 SDK is missing; trying apt-get install dotnet-sdk-10.0"
    if install_packages dotnet-sdk-10.0 && has_sdk; then return 0; fi
    cat >&2 <<'MISSING'
coolproof: can't go on: the .NET SDK 10.0 is not on this machine, and its package sources don't carry dotnet-sdk-10.0
  (or apt-get couldn't be run: that takes root, or sudo without a password).
  What to do: follow "Install .NET on Linux" in the .NET documentation for your distribution, which adds the package
  source that carries it, then: apt-get install dotnet-sdk-10.0
  Or unpack the SDK for your machine into ~/.dotnet. Nothing else is needed, and nothing was changed.
MISSING
    return 1
}
