// This device's clock against the bench's. Phones are minutes wrong, and put themselves right in the middle of a run: the difference is measured, kept as
// clock.offset entries, and every stamp is read through the measurement that held (docs/formats/entries.md, "Time").
import { entry, number } from "./entries.js";
import { offsetAt } from "./lines.js";
import { simulated } from "./rehearsal.js";
import { ask } from "./sending.js";

/** @typedef {import("./entries.js").Entry} Entry */

const goodRoundTripMs = 1_000;
const leastChangeMs = 100;
const jumpMs = 300;
const asleepMs = 2_000;
const measureEveryMs = 5 * 60_000;

export class DeviceClock {
    /** @param {string} device */
    constructor(device) {
        this.device = device;
        /** Measurements that were kept. @type {{ at: number, ms: number, id: string }[]} */
        this.offsets = [];
        /** @type {{ ms: number, withinMs: number } | null} */
        this.estimate = null;
        this.measuredAt = -Infinity;
        this.wall = Date.now();
        this.steady = performance.now();
        this.hidden = false;
        document.addEventListener("visibilitychange", () => (this.hidden ||= document.visibilityState !== "visible"));
    }

    /** Takes the measurements among entries of this device. @param {Iterable<Entry>} entries */
    know(entries) {
        const known = new Map(this.offsets.map((measured) => [measured.id, measured]));
        for (const one of entries) {
            if (one.kind === "clock.offset") known.set(one.id, { id: one.id, at: Date.parse(one.at), ms: number(one.body, "ms") ?? 0 });
        }
        this.offsets = [...known.values()].sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
        this.estimate ??= this.offsets.length > 0 ? { ms: this.inForce(Date.now()), withinMs: leastChangeMs } : null;
    }

    /** A measurement that was not kept after all. @param {string} id */
    forget(id) {
        this.offsets = this.offsets.filter((measured) => measured.id !== id);
    }

    /** The offset through which the bench will read an instant of this device's clock. @param {number} at */
    inForce(at) {
        return offsetAt(this.offsets, at);
    }

    /** The bench's time now, ms since 1970. */
    now() {
        const at = Date.now();
        return at - this.inForce(at);
    }

    /** An instant of the bench's time by this device's clock. @param {number} serverMs */
    toDevice(serverMs) {
        return serverMs + this.inForce(Date.now());
    }

    /**
     * Looks whether the wall clock was set while the page was awake: it then moved by something else than the steady one. But the steady clock also stands still
     * while a machine sleeps, so a leap forward is taken for a setting only on a phone whose screen stayed on; else the bench must tell.
     * @returns {boolean} whether the page may have slept since the last look
     */
    look() {
        const wall = Date.now();
        const steady = performance.now();
        const passed = steady - this.steady;
        const jump = wall - this.wall - passed;
        if (simulated()) return passed > asleepMs; // a made-up clock is never wrong
        const awake = passed < asleepMs && !this.hidden;
        this.wall = wall;
        this.steady = steady;
        this.hidden = document.visibilityState !== "visible";
        if (Math.abs(jump) <= jumpMs) return !awake && passed > asleepMs;
        this.measuredAt = -Infinity;
        const set = jump < 0 || (awake && matchMedia("(pointer: coarse)").matches);
        if (set && this.estimate) this.estimate = { ms: this.estimate.ms + jump, withinMs: this.estimate.withinMs };
        return !set;
    }

    /** Whether it is time to measure. */
    get due() {
        return !simulated() && performance.now() - this.measuredAt > measureEveryMs;
    }

    /** Measures, the quickest of a few answers counting. @returns {Promise<boolean>} whether the bench answered */
    async measure() {
        if (simulated()) return false;
        /** @type {{ ms: number, withinMs: number } | null} */
        let best = null;
        for (let tries = 0; tries < 4; tries++) {
            const sent = performance.now();
            const wallAtSent = Date.now();
            const answer = await ask("/api/clock", {}, 4_000).catch(() => null);
            const tripMs = performance.now() - sent;
            if (!answer?.ok) break;
            const serverAt = Date.parse((await answer.json()).serverAt);
            if (Number.isNaN(serverAt)) break;
            if (!best || tripMs / 2 < best.withinMs) best = { ms: wallAtSent + tripMs / 2 - serverAt, withinMs: tripMs / 2 };
            if (tripMs < 30) break;
        }
        if (!best || best.withinMs * 2 > goodRoundTripMs && this.estimate) return best !== null;
        // A better measurement of the same offset is not thrown away for a worse one that agrees with it.
        if (!this.estimate || best.withinMs <= this.estimate.withinMs || Math.abs(best.ms - this.estimate.ms) > best.withinMs + this.estimate.withinMs) this.estimate = best;
        this.measuredAt = performance.now();
        return true;
    }

    /** Whether the bench would read an instant of this device's clock wrongly by what it was told. @param {number} at */
    misread(at) {
        if (!this.estimate || simulated()) return false;
        return this.offsets.length === 0 || Math.abs(this.estimate.ms - this.inForce(at)) > Math.max(leastChangeMs, this.estimate.withinMs);
    }

    /**
     * What must be said about the clock so that stamps from now on are read right; null where the bench will read them right already.
     * @param {number} at the instant of the stamp by this device's clock
     * @returns {Entry | null}
     */
    toSay(at) {
        if (!this.estimate || !this.misread(at)) return null;
        const said = entry("clock.offset", this.device, { ms: Math.round(this.estimate.ms) }, at);
        this.know([said]);
        return said;
    }
}
