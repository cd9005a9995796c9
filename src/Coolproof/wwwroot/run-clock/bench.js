// What the bench knows of the day: fetched when it says that something was kept, held on the phone for when it can't be reached.
import { read, write } from "./database.js";
import { simulate } from "./rehearsal.js";
import { ask, Unpaired } from "./sending.js";

/** @typedef {import("./entries.js").Said} Said */
/** @typedef {import("./outbox.js").Outbox} Outbox */
/** @typedef {{ id: string, name: string, colour: string, path: string, fan: boolean | null }} Option */
/** @typedef {{ id: string, name: string, type: string, unit: "c" | "f" | null }} Instrument */
/**
 * Names and plans of the day.
 * @typedef {{ name: string, utcOffsetMin: number, driveS: number | null, shots: number, plan: string[], advised: string | null, advisedAfter: number, surface: string, options: Option[], instruments: Instrument[],
 *   packs: { id: string, name: string }[], devices: { id: string, name: string, role: string }[], canLimitC: number | null,
 *   rehearsal: { fromMs: number } | null }} Things
 */
/** @typedef {{ cursor: number, count: number, serverAt: string, things: Things, entries: Said[] }} Answer */

/** @type {Things} */
export const noThings = { name: "", utcOffsetMin: 0, driveS: null, shots: 3, plan: [], advised: null, advisedAfter: 0, surface: "unknown", options: [], instruments: [], packs: [], devices: [], canLimitC: null, rehearsal: null };

const pollMs = 10_000;

export class Bench {
    /**
     * @param {Outbox} outbox
     * @param {string} day
     * @param {() => void} changed told after each fetch
     * @param {() => void} answers told when the bench answers again
     */
    constructor(outbox, day, changed, answers) {
        this.answers = answers;
        this.outbox = outbox;
        this.day = day;
        this.changed = changed;
        this.things = noThings;
        /** @type {Map<string, Said>} */
        this.entries = new Map();
        this.cursor = 0;
        this.reached = false;
        this.busy = false;
        this.again = false;
        /** How the day's verdict stood. @type {string} */
        this.verdict = "";
        /** @type {EventSource | null} */
        this.live = null;
    }

    /** Takes what was fetched in earlier visits. */
    async recall() {
        const said = await read(this.outbox.db, "bench", (store) => /** @type {IDBRequest<{ id: string, said: Said }[]>} */ (store.index("day").getAll(this.day)));
        for (const one of said) this.entries.set(one.id, one.said);
        const note = /** @type {{ cursor: number, things: Things } | undefined} */ (await this.outbox.note(`day ${this.day}`));
        if (note) ({ cursor: this.cursor, things: this.things } = note);
        if (this.things.rehearsal) simulate(this.day, this.things.rehearsal.fromMs);
    }

    follow() {
        const listen = () => {
            if (this.live && this.live.readyState !== EventSource.CLOSED) return;
            this.live = new EventSource("/api/live");
            this.live.onopen = () => {
                this.answers();
                this.fetch();
            };
            this.live.addEventListener("entries", () => this.fetch());
            // A verdict in the making says so several times a second; only a new word of it may mean a new advice.
            this.live.addEventListener("verdict", (event) => {
                const verdict = JSON.parse(event.data);
                if (verdict.about !== this.day || verdict.state === this.verdict) return;
                this.verdict = verdict.state;
                this.fetch();
            });
        };
        listen();
        setInterval(() => {
            listen();
            if (!this.live || this.live.readyState !== EventSource.OPEN) this.fetch();
        }, pollMs);
        document.addEventListener("visibilitychange", () => {
            if (document.visibilityState !== "visible") return;
            listen();
            this.fetch();
        });
        window.addEventListener("online", () => this.fetch());
        this.fetch();
    }

    /** Fetches what is new; once more afterwards when asked meanwhile. */
    fetch() {
        if (this.busy) {
            this.again = true;
            return;
        }
        this.busy = true;
        this.again = false;
        this.take(this.cursor)
            .then(() => (this.reached = true), (/** @type {unknown} */ cause) => (this.reached = cause instanceof Unpaired))
            .finally(() => {
                this.busy = false;
                this.changed();
                if (this.again) this.fetch();
            });
    }

    /** @param {number} after @returns {Promise<void>} */
    async take(after) {
        const response = await ask(`/clock/${this.day}/entries?after=${after}`);
        if (!response.ok) throw new Error(`the bench answered ${response.status}`);
        const answer = /** @type {Answer} */ (await response.json());
        // A notebook that was put back from a backup is shorter; a run that came to this day brings older entries. Then everything is taken anew.
        const all = after === 0;
        const known = all ? new Map() : new Map(this.entries);
        for (const said of answer.entries) known.set(said.id, said);
        if (!all && (answer.cursor < after || known.size !== answer.count)) return this.take(0);
        const gone = all ? [...this.entries.keys()].filter((id) => !known.has(id)) : [];
        if (all) await this.sendAgain(known);
        await write(this.outbox.db, ["bench", "notes"], (store) => {
            for (const id of gone) store("bench").delete(id);
            for (const said of answer.entries) store("bench").put({ id: said.id, day: this.day, said });
            store("notes").put({ cursor: answer.cursor, things: answer.things }, `day ${this.day}`);
        });
        this.entries = known;
        this.cursor = answer.cursor;
        this.things = answer.things;
        if (this.things.rehearsal) simulate(this.day, this.things.rehearsal.fromMs);
    }

    /** What the bench had and has no more is sent again. @param {Map<string, Said>} known */
    async sendAgain(known) {
        const lost = (await this.outbox.ofDay(this.day)).filter((one) => one.state === "kept" && one.day === this.day && !known.has(one.id));
        if (lost.length > 0) await this.outbox.mark(new Map(lost.map((one) => [one.id, { state: /** @type {const} */ ("here"), reason: null }])));
    }
}
