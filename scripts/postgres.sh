# Finds PostgreSQL's server programs for the tests of the store, or installs them where the machine's own packages carry them. Sourced by ./test
# after dotnet.sh. Nothing is started here: the tests run servers of their own, in temporary folders.

has_postgres() { compgen -G '/usr/lib/postgresql/*/bin/initdb' >/dev/null; }

need_postgres() {
    has_postgres && return 0
    say "PostgreSQL is missing; trying apt-get install postgresql"
    if install_packages postgresql && has_postgres; then return 0; fi
    say "the tests of the store need PostgreSQL, and it can't be had here: apt-get install postgresql"
    return 1
}
