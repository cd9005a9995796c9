# Finds Chromium for the tests in a real browser, or installs it where the machine's own packages carry it; npm, with which the types of the run
# clock's modules are checked; and Poppler's tools, with which printed pages are looked at. Sourced by ./test after dotnet.sh.

has_chromium() { command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null; }

need_chromium() {
    need_full_chromium || return 1
    # Without windows, menus and extensions most tests take half the time; they pass without it too. Both are asked for: they share a package of
    # one version, and apt might take the other away.
    command -v chromium-headless-shell >/dev/null && return 0
    command -v apt-get >/dev/null || return 0
    say "trying apt-get install chromium-headless-shell, with which these tests take half the time"
    install_packages chromium chromium-headless-shell || say "it can't be had here; they take the other Chromium"
    return 0
}

need_full_chromium() {
    local missing=()
    has_chromium || missing+=(chromium)
    command -v npm >/dev/null || missing+=(npm)
    command -v pdftoppm >/dev/null || missing+=(poppler-utils)
    ((${#missing[@]} == 0)) && return 0
    say "${missing[*]} is missing; trying apt-get install ${missing[*]}"
    if install_packages "${missing[@]}" && has_chromium; then return 0; fi
    say "the tests in a real browser need ${missing[*]}, and it can't be had here: apt-get install ${missing[*]}"
    return 1
}
