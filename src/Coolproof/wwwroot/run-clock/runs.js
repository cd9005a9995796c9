// What a day's entries add up to, on the phone as on the bench: the mirror of RunFold, RunGroups and LeafFold in Coolproof.Notebook.Journal.Folding.
import { number, text } from "./entries.js";
import { byInstant, bySaying, linesByThing } from "./lines.js";

/** @typedef {import("./entries.js").Said} Said */
/** @typedef {import("./entries.js").Body} Body */
/** @typedef {import("./lines.js").Line} Line */
/**
 * An instant that one or several devices stamped. `others` are kept and shown.
 * @typedef {{ at: number, counted: Line, others: Line[], spreadS: number, chosen: boolean }} Clocked
 */
/** @typedef {{ id: string, fields: Body, at: number | null, since: number, readC: number | null, shown: { value: number, unit: string, id: string } | null, photo: string | null, trigger: Line | null }} Shot */
/** @typedef {{ id: string, way: string, begin: number, end: number | null }} Cooling */
/**
 * A run as noted. Instants are ms since 1970 by the server's clock.
 * @typedef {{ id: string, ids: string[], fields: Body, since: number, devices: string[], countdown: { at: number, seconds: number, driveS: number, device: string } | null,
 *   go: Clocked | null, stop: Clocked | null, halt: Clocked | null, powerOff: Clocked | null, stills: { down: number, up: number | null }[], fanDeadAt: number | null,
 *   abandonedAt: number | null, because: string | null, laps: number[], fanBefore: Line | null, fanAfter: Line | null, shots: Shot[], coolings: Cooling[], chargeMah: number | null }} Run
 */
/** @typedef {{ id: string, at: number, body: Body }} Weather */
/** @typedef {{ runs: Run[], weather: Weather[], offers: { number: number, a: string, b: string }[], roles: Map<string, string> }} Day */

/**
 * A day.
 * @param {Iterable<Said>} entries entries about the day, its runs and the devices, in any order
 * @param {string} day its UUID
 * @param {number} utcOffsetMin local time minus UTC, min: for runs that were typed with a local start
 * @returns {Day}
 */
export function foldDay(entries, day, utcOffsetMin = 0) {
    const things = linesByThing(entries);
    const roles = rolesOf(things);
    const { groups, decided } = groupsOf(things);
    const shots = [...things].map(([id, lines]) => shotOf(id, lines)).filter((shot) => shot !== null);
    const coolings = [...things].map(([id, lines]) => coolingOf(id, lines)).filter((cooling) => cooling !== null);
    /** @type {Run[]} */
    const runs = [];
    for (const [id, own] of things) {
        const ids = groups.get(id) ?? [id];
        if (ids[0] !== id) continue;
        const lines = ids.length === 1 ? own : distinct(ids.flatMap((other) => things.get(other) ?? [])).sort(bySaying);
        if (removed(lines)) continue;
        const run = runOf(ids, lines, shots, coolings, roles);
        if (run && run.fields.day === day) runs.push(run);
    }
    runs.sort((a, b) => runTime(a, utcOffsetMin) - runTime(b, utcOffsetMin) || rank(a) - rank(b) || a.since - b.since || (a.id < b.id ? -1 : 1));
    const weather = (things.get(day) ?? []).filter((line) => line.live && line.kind === "weather").sort(byInstant).map((line) => ({ id: line.id, at: line.at, body: line.said.body }));
    return { runs, weather, offers: offersOf(runs, decided), roles };
}

/** @param {Run} run @param {number} utcOffsetMin */
function runTime(run, utcOffsetMin) {
    if (run.go) return run.go.at;
    const typed = Date.parse(`${text(run.fields, "startedAt") ?? ""}Z`);
    return Number.isNaN(typed) ? Number.MAX_SAFE_INTEGER : typed - (number(run.fields, "startedOffsetS") ?? utcOffsetMin * 60) * 1000;
}

/** @param {Run} run */
const rank = (run) => number(run.fields, "order") ?? number(run.fields, "number") ?? Number.MAX_SAFE_INTEGER;

/** @param {Line[]} lines */
const distinct = (lines) => [...new Map(lines.map((line) => [line.id, line])).values()];

/** @param {Line[]} lines */
const removed = (lines) => lines.some((line) => line.live && line.kind === "remove");

/** Later groups go before earlier ones; within one the latest that names a field counts. @param {Line[][]} ranked @returns {Body} */
const merged = (...ranked) => Object.assign({}, ...ranked.flat().map((line) => line.said.body));

/** @param {Map<string, Line[]>} things @returns {Map<string, string>} */
function rolesOf(things) {
    const roles = new Map();
    for (const [id, lines] of things) {
        const role = text(merged(lines.filter((line) => line.live && line.kind === "device.set")), "role");
        if (role) roles.set(id, role);
    }
    return roles;
}

/** Which runs were declared the same, by what was said last of each pair. @param {Map<string, Line[]>} things */
function groupsOf(things) {
    const said = distinct([...things.values()].flat().filter((line) => line.live && (line.kind === "run.same" || line.kind === "run.two"))).sort(bySaying);
    /** @type {Map<string, boolean>} */
    const decided = new Map();
    for (const line of said) {
        const other = text(line.said.body, "other");
        if (other && other !== line.said.about) decided.set(pair(line.said.about, other), line.kind === "run.same");
    }
    /** @type {Map<string, string>} */
    const root = new Map();
    const rootOf = (/** @type {string} */ id) => {
        while (root.has(id) && root.get(id) !== id) id = /** @type {string} */ (root.get(id));
        return id;
    };
    for (const [both, same] of decided) {
        if (!same) continue;
        const [x, y] = both.split(" ").map(rootOf);
        root.set(x < y ? y : x, x < y ? x : y);
        if (!root.has(x < y ? x : y)) root.set(x < y ? x : y, x < y ? x : y);
    }
    /** @type {Map<string, string[]>} */
    const groups = new Map();
    for (const id of [...root.keys()].sort()) {
        const of = rootOf(id);
        const group = groups.get(of) ?? [];
        group.push(id);
        groups.set(of, group);
        groups.set(id, group);
    }
    return { groups, decided };
}

/** @param {string} a @param {string} b */
export const pair = (a, b) => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Pairs of runs that several devices began under one number, and nobody said yet whether they are one. @param {Run[]} runs @param {Map<string, boolean>} decided */
function offersOf(runs, decided) {
    const offers = [];
    const open = runs.filter((run) => number(run.fields, "number") !== null && run.abandonedAt === null).sort((a, b) => (a.id < b.id ? -1 : 1));
    for (const [i, a] of open.entries()) {
        for (const b of open.slice(i + 1)) {
            if (a.fields.number !== b.fields.number || decided.has(pair(a.id, b.id))) continue;
            if (a.devices.join() !== b.devices.join()) offers.push({ number: /** @type {number} */ (a.fields.number), a: a.id, b: b.id });
        }
    }
    return offers;
}

/** @param {string} id @param {Line[]} lines @returns {Shot | null} */
function shotOf(id, lines) {
    const live = lines.filter((line) => line.live && (line.kind === "shot" || line.kind.startsWith("shot.")));
    const triggers = live.filter((line) => line.kind === "shot");
    const sets = live.filter((line) => line.kind === "shot.set");
    if ((triggers.length === 0 && sets.length === 0) || removed(lines)) return null;
    const fields = merged(triggers, sets);
    const read = live.filter((line) => line.kind === "shot.read").at(-1);
    const photo = live.filter((line) => line.kind === "shot.photo").at(-1);
    const trigger = triggers[0] ?? null;
    const shown = read ? { value: number(read.said.body, "value") ?? 0, unit: text(read.said.body, "unit") ?? "c", id: read.id } : null;
    return {
        id, fields, trigger, shown, since: live[0].tapped,
        at: fields.untimed === true || !trigger ? null : trigger.at,
        readC: shown === null ? null : shown.unit === "f" ? ((shown.value - 32) * 5) / 9 : shown.value,
        photo: photo ? text(photo.said.body, "photo") : null,
    };
}

/** @param {string} id @param {Line[]} lines @returns {(Cooling & { run: string | null }) | null} */
function coolingOf(id, lines) {
    const begin = lines.find((line) => line.live && line.kind === "cooldown.begin");
    if (!begin || removed(lines)) return null;
    const end = lines.find((line) => line.live && line.kind === "cooldown.end");
    return { id, run: text(begin.said.body, "run"), way: text(begin.said.body, "way") ?? "", begin: begin.at, end: end ? end.at : null };
}

/** Whether a kind speaks of a run. @param {string} kind */
const ofRun = (kind) => kind.startsWith("run.") || kind === "charge" || kind === "clock.choice";

/**
 * @param {string[]} ids the smallest first
 * @param {Line[]} lines
 * @param {Shot[]} shots
 * @param {(Cooling & { run: string | null })[]} coolings
 * @param {Map<string, string>} roles
 * @returns {Run | null}
 */
function runOf(ids, lines, shots, coolings, roles) {
    const live = lines.filter((line) => line.live && ofRun(line.kind));
    if (!live.some((line) => line.kind.startsWith("run.") && line.kind !== "run.same" && line.kind !== "run.two")) return null;
    const of = (/** @type {string} */ kind) => live.filter((line) => line.kind === kind);
    const clocked = (/** @type {string} */ kind, /** @type {string} */ name) => clockedOf(live, kind, name, roles);
    const down = of("run.countdown").at(-1);
    const countdown = down ? { at: down.at, seconds: number(down.said.body, "seconds") ?? 0, driveS: number(down.said.body, "driveS") ?? 0, device: down.said.device } : null;
    const stop = clocked("run.stop", "stop");
    const halt = clocked("run.halt", "halt");
    const abandon = of("run.abandon").at(-1);
    const mine = (/** @type {string | null} */ run) => run !== null && ids.includes(run);
    return {
        id: ids[0], ids, since: live[0].tapped, countdown, stop, halt,
        fields: merged(of("run.begin"), of("run.set")),
        devices: [...new Set(live.map((line) => line.said.device))],
        go: clocked("run.go", "go") ?? (countdown && down ? { at: countdown.at + countdown.seconds * 1000, counted: down, others: [], spreadS: 0, chosen: false } : null),
        powerOff: clocked("run.power-off", "power-off"),
        stills: stillsOf(live, (stop ?? halt)?.at ?? null),
        fanDeadAt: of("run.fan-dead").reduce((/** @type {number | null} */ first, line) => (first === null || line.at < first ? line.at : first), null),
        abandonedAt: abandon ? abandon.at : null,
        because: abandon ? text(abandon.said.body, "because") : null,
        laps: lapsOf(of("run.lap")),
        fanBefore: of("run.fan").filter((line) => line.said.body.when === "before").at(-1) ?? null,
        fanAfter: of("run.fan").filter((line) => line.said.body.when === "after").at(-1) ?? null,
        shots: shots.filter((shot) => mine(text(shot.fields, "run")))
            .sort((a, b) => (a.at ?? Infinity) - (b.at ?? Infinity) || (number(a.fields, "order") ?? Infinity) - (number(b.fields, "order") ?? Infinity) || a.since - b.since || (a.id < b.id ? -1 : 1)),
        coolings: coolings.filter((cooling) => mine(cooling.run)).sort((a, b) => a.begin - b.begin || (a.id < b.id ? -1 : 1)),
        chargeMah: chargeOf(live),
    };
}

/** One device's first press counts. Of several: the one that a person chose, else one whose role is the clock, else the earliest. @param {Line[]} live @param {string} kind @param {string} name @param {Map<string, string>} roles @returns {Clocked | null} */
function clockedOf(live, kind, name, roles) {
    const all = live.filter((line) => line.kind === kind);
    if (all.length === 0) return null;
    /** @type {Map<string, Line>} */
    const firsts = new Map();
    for (const line of all) if (!firsts.has(line.said.device)) firsts.set(line.said.device, line);
    const choice = live.filter((line) => line.kind === "clock.choice" && line.said.body.event === name && all.some((stamp) => stamp.id === line.said.body.entry)).at(-1);
    const isClock = (/** @type {Line} */ line) => (roles.get(line.said.device) === "clock" ? 0 : 1);
    const counted = choice
        ? /** @type {Line} */ (all.find((line) => line.id === choice.said.body.entry))
        : [...firsts.values()].sort((a, b) => isClock(a) - isClock(b) || byInstant(a, b))[0];
    const compared = [...firsts.values()].map((line) => (line.said.device === counted.said.device ? counted.at : line.at));
    return {
        at: counted.at, counted, chosen: choice !== undefined,
        others: all.filter((line) => line.id !== counted.id).sort(byInstant),
        spreadS: (Math.max(...compared) - Math.min(...compared)) / 1000,
    };
}

/** @param {Line[]} live @param {number | null} end */
function stillsOf(live, end) {
    /** @type {{ down: number, up: number | null }[]} */
    const stills = [];
    /** @type {number | null} */
    let since = null;
    for (const line of live.filter((line) => (line.kind === "run.down" || line.kind === "run.up") && (end === null || line.at <= end)).sort(byInstant)) {
        if (line.kind === "run.down") {
            since ??= line.at;
        } else if (since !== null) {
            stills.push({ down: since, up: line.at });
            since = null;
        }
    }
    if (since !== null) stills.push({ down: since, up: end });
    return stills;
}

/** Of two phones that both count laps, the one that counted more missed fewer. @param {Line[]} laps */
function lapsOf(laps) {
    /** @type {Map<string, number[]>} */
    const byDevice = new Map();
    for (const line of laps) byDevice.set(line.said.device, [...(byDevice.get(line.said.device) ?? []), line.at]);
    const most = [...byDevice].sort((a, b) => b[1].length - a[1].length || (a[0] < b[0] ? -1 : 1))[0];
    return most ? most[1].sort((a, b) => a - b) : [];
}

/** @param {Line[]} live */
function chargeOf(live) {
    const said = live.filter((line) => line.kind === "charge" || (line.kind === "run.set" && "chargeBackMah" in line.said.body)).at(-1);
    return said ? number(said.said.body, said.kind === "charge" ? "mah" : "chargeBackMah") : null;
}
