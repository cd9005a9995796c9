// All that this device knows of the day: what it made, what the bench told, and what they add up to. What is written is safe on the phone before it is shown.
import { Bench } from "./bench.js";
import { DeviceClock } from "./device-clock.js";
import { entry } from "./entries.js";
import { anyDay, Outbox } from "./outbox.js";
import { foldDay } from "./runs.js";
import { Sending } from "./sending.js";

/** @typedef {import("./entries.js").Entry} Entry */
/** @typedef {import("./entries.js").Said} Said */
/** @typedef {import("./outbox.js").Held} Held */
/** @typedef {import("./outbox.js").HeldPhoto} HeldPhoto */

export class Journal {
    /** @param {Outbox} outbox @param {string} dayId @param {() => void} changed */
    constructor(outbox, dayId, changed) {
        this.outbox = outbox;
        this.dayId = dayId;
        this.changed = changed;
        this.clock = new DeviceClock(outbox.device);
        this.bench = new Bench(outbox, dayId, () => this.refold(), () => this.sending.now());
        this.sending = new Sending(outbox, (_, sent) => this.sent(sent));
        /** Entries made here. @type {Map<string, Held>} */
        this.own = new Map();
        this.day = foldDay([], dayId);
        /** @type {import("./outbox.js").Counts} */
        this.counts = { here: 0, kept: 0, aside: 0, photosHere: 0, photosAside: 0, unsaved: 0 };
        /** What went wrong with the phone's storage, in words; null when nothing did. @type {string | null} */
        this.trouble = null;
        /** @type {Promise<unknown>} */
        this.turn = Promise.resolve();
        /** Writes that are not safe on the phone yet. */
        this.writing = 0;
        this.tabs = "BroadcastChannel" in window ? new BroadcastChannel("coolproof-run-clock") : null;
        if (this.tabs) this.tabs.onmessage = () => void this.reread();
    }

    /** @param {string} dayId @param {() => void} changed */
    static async open(dayId, changed) {
        const journal = new Journal(await Outbox.open(), dayId, changed);
        await journal.bench.recall();
        await journal.reread();
        return journal;
    }

    /** Begins to talk with the bench. */
    start() {
        void navigator.storage?.persist?.().catch(() => false);
        this.sending.start();
        this.bench.follow();
    }

    /** The bench's time now, ms since 1970. */
    now() {
        return this.clock.now();
    }

    /**
     * Keeps entries on this phone, then shows and sends them. Writes wait for each other.
     * @param {Entry[]} entries
     * @param {{ unless?: (sameDay: Held[]) => boolean, photo?: HeldPhoto }} with_
     * @returns {Promise<boolean>} false where `unless` held
     */
    write(entries, with_ = {}) {
        this.writing++;
        const written = this.turn.then(async () => {
            const clock = entries.length > 0 ? this.clock.toSay(Math.min(...entries.map((one) => Date.parse(one.at)))) : null;
            const all = clock ? [clock, ...entries] : entries;
            try {
                const kept = await this.outbox.add(this.dayId, all, with_.unless ?? null, with_.photo ?? null);
                this.take(kept);
                if (clock && kept.length === 0) this.clock.forget(clock.id);
                this.trouble = null;
                return kept.length > 0;
            } catch (cause) {
                this.take(this.outbox.unsaved);
                this.trouble = cause instanceof Error ? cause.message : String(cause);
                return true;
            } finally {
                this.writing--;
                this.refold();
                this.tabs?.postMessage("written");
                this.sending.now();
            }
        });
        this.turn = written.catch(() => {});
        return written;
    }

    /** Takes entries back, the latest first. @param {Entry[]} entries @param {number} at */
    takeBack(entries, at) {
        return this.write([...entries].reverse().map((one) => entry("undo", one.about, { of: one.id }, at)));
    }

    /** @param {Held[]} held */
    take(held) {
        for (const one of held) this.own.set(one.id, one);
        this.clock.know(held.map((one) => one.entry));
    }

    /** Reads what this device made: another tab of it may have written. */
    async reread() {
        this.own = new Map();
        this.take(await this.outbox.ofDay(this.dayId));
        this.refold();
    }

    /** @param {boolean} sentSome */
    async sent(sentSome) {
        if (sentSome) await this.reread();
        if (this.clock.due && this.sending.state !== "unreachable" && (await this.clock.measure())) await this.sayClock();
        this.refold();
    }

    /** Keeps a new measurement of the clock where it changes how stamps are read. */
    sayClock() {
        const said = this.clock.toSay(Date.now()); // shown right from this moment on
        if (!said) return this.turn;
        this.turn = this.turn.then(async () => {
            this.take(await this.outbox.add(anyDay, [said]).catch(() => this.outbox.unsaved));
            this.sending.now();
        });
        return this.turn;
    }

    refold() {
        /** @type {Map<string, Said>} */
        const all = new Map();
        for (const one of this.own.values()) all.set(one.id, { ...one.entry, device: one.device });
        for (const [id, said] of this.bench.entries) all.set(id, said);
        // The bench may hold measurements of this device's clock that its storage lost.
        this.clock.know([...this.bench.entries.values()].filter((said) => said.kind === "clock.offset" && said.device === this.outbox.device));
        this.day = foldDay(all.values(), this.dayId, this.bench.things.utcOffsetMin);
        void this.outbox.counts().then((counts) => {
            this.counts = counts;
            this.changed();
        });
        this.changed();
    }
}
