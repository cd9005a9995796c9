// When each entry was, and whether it stands: the mirror of Coolproof.Notebook.Journal.Folding (EntryIndex, Clocks, Lines).
import { number, text } from "./entries.js";

/** @typedef {import("./entries.js").Said} Said */
/**
 * An entry beside what others say of it. Instants are ms since 1970 by the server's clock.
 * @typedef {{ said: Said, id: string, kind: string, tapped: number, at: number, nudgedS: number, live: boolean }} Line
 */

/** The order in which what was said later counts. @param {Line} a @param {Line} b */
export const bySaying = (a, b) => a.tapped - b.tapped || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The order of what was spoken of. @param {Line} a @param {Line} b */
export const byInstant = (a, b) => a.at - b.at || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The entry that an entry refers to; null for none. @param {Said} said */
function refersTo(said) {
    if (said.kind === "undo" || said.kind === "nudge") return text(said.body, "of");
    return said.kind.endsWith(".set") ? null : said.corrects;
}

/** Entries by id and by the entry that they refer to; those that refer to each other in a circle left out of the latter. */
class Index {
    /** @param {Iterable<Said>} entries */
    constructor(entries) {
        /** @type {Map<string, Said>} */
        this.byId = new Map();
        for (const said of entries) if (!this.byId.has(said.id)) this.byId.set(said.id, said);
        /** @type {Map<string, Said[]>} */
        this.referring = new Map();
        for (const said of this.byId.values()) {
            const target = refersTo(said);
            if (target === null || this.circular(said)) continue;
            const list = this.referring.get(target);
            if (list) list.push(said);
            else this.referring.set(target, [said]);
        }
    }

    /** @param {Said} said */
    circular(said) {
        const seen = new Set([said.id]);
        let target = refersTo(said);
        while (target !== null && !seen.has(target)) {
            const next = this.byId.get(target);
            if (!next) return false;
            seen.add(target);
            target = refersTo(next);
        }
        return target === said.id;
    }

    /** Who refers to an entry. @param {string} id @returns {Said[]} */
    of(id) {
        return this.referring.get(id) ?? [];
    }
}

/** A correction stands in for an entry of its own kind. @param {Said} referring @param {Said} target */
const corrects = (referring, target) => referring.kind === target.kind && referring.kind !== "nudge" && referring.kind !== "undo";

/** Whether an entry stands, not taken back and not stood in for. @param {Index} index @param {Said} said @param {Map<string, boolean>} known */
function stands(index, said, known) {
    const open = [said];
    while (open.length > 0) {
        const top = open[open.length - 1];
        let live = true;
        let ready = true;
        for (const referring of index.of(top.id)) {
            if (referring.kind !== "undo" && !corrects(referring, top)) continue;
            const its = known.get(referring.id);
            if (its === undefined) {
                open.push(referring);
                ready = false;
            } else if (its) {
                live = false;
            }
        }
        if (!ready) continue;
        known.set(top.id, live);
        open.pop();
    }
    return known.get(said.id) === true;
}

/**
 * By how much a device's clock was ahead at an instant of it: its latest measurement before, else its first after; 0 without any.
 * @param {{ at: number, ms: number }[]} offsets in the order of `at`
 * @param {number} at ms by the device's clock
 */
export function offsetAt(offsets, at) {
    let offset = offsets.length > 0 ? offsets[0].ms : 0;
    for (const measured of offsets) if (measured.at <= at) offset = measured.ms;
    return Math.round(offset);
}

/**
 * The lines of entries, by the thing that each speaks of. A nudge or an undo belongs to the thing of the entry at the end of its references.
 * @param {Iterable<Said>} entries in any order
 * @returns {Map<string, Line[]>} each in the order of saying
 */
export function linesByThing(entries) {
    const index = new Index(entries);
    /** @type {Map<string, boolean>} */
    const known = new Map();
    const clocks = clocksOf(index, known);
    /** @type {Map<string, Line[]>} */
    const things = new Map();
    for (const said of index.byId.values()) {
        const line = lineOf(index, said, known, clocks);
        for (const thing of homes(index, said)) {
            const list = things.get(thing);
            if (list) list.push(line);
            else things.set(thing, [line]);
        }
    }
    for (const list of things.values()) list.sort(bySaying);
    return things;
}

/** @param {Index} index @param {Map<string, boolean>} known */
function clocksOf(index, known) {
    /** @type {Map<string, { at: number, ms: number, id: string }[]>} */
    const clocks = new Map();
    for (const said of index.byId.values()) {
        if (said.kind !== "clock.offset" || !stands(index, said, known)) continue;
        const measured = { at: Date.parse(said.at), ms: number(said.body, "ms") ?? 0, id: said.id };
        const list = clocks.get(said.device);
        if (list) list.push(measured);
        else clocks.set(said.device, [measured]);
    }
    for (const list of clocks.values()) list.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
    return clocks;
}

/** @param {Index} index @param {Said} said @param {Map<string, boolean>} known @param {Map<string, { at: number, ms: number }[]>} clocks @returns {Line} */
function lineOf(index, said, known, clocks) {
    let nudgedMs = 0;
    for (const referring of index.of(said.id)) {
        if (referring.kind === "nudge" && stands(index, referring, known)) nudgedMs += Math.round((number(referring.body, "seconds") ?? 0) * 1000);
    }
    const device = Date.parse(said.at);
    const tapped = device - offsetAt(clocks.get(said.device) ?? [], device);
    const at = tapped + Math.round(nudgedMs - (number(said.body, "secondsAgo") ?? 0) * 1000);
    return { said, id: said.id, kind: said.kind, tapped, at, nudgedS: nudgedMs / 1000, live: stands(index, said, known) };
}

/** Things that an entry belongs to. @param {Index} index @param {Said} said @returns {Set<string>} */
function homes(index, said) {
    let steps = 0;
    while (said.kind === "undo" || said.kind === "nudge") {
        const next = index.byId.get(text(said.body, "of") ?? "");
        if (!next || ++steps > index.byId.size) return new Set();
        said = next;
    }
    const body = said.body;
    switch (said.kind) {
        case "shot.read":
        case "shot.photo":
            return new Set([text(body, "shot") ?? said.about]);
        case "charge":
        case "clock.choice":
            return new Set([text(body, "run") ?? said.about]);
        case "weather":
            return new Set([text(body, "day") ?? said.about]);
        case "clock.offset":
            return new Set([said.device]);
        case "run.same":
        case "run.two":
            return new Set([said.about, text(body, "other") ?? said.about]);
        default:
            return new Set([said.about]);
    }
}
