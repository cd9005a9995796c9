// Entries and photos made on this device, by the rules of docs/run-clock.md ("Nothing is lost"): a tap counts when its transaction is complete, an entry
// leaves the outbox only when the bench lists its id, what the bench refuses is set aside and shown, and nothing expires.
import { openDatabase, read, write } from "./database.js";

/** @typedef {import("./entries.js").Entry} Entry */
/** here: on this phone only; kept: the bench has it; aside: the bench refused it. @typedef {"here" | "kept" | "aside"} State */
/** @typedef {{ id: string, day: string, device: string, entry: Entry, state: State, reason: string | null }} Held */
/** @typedef {{ id: string, day: string, about: string, type: string, bytes: ArrayBuffer, state: State, reason: string | null }} HeldPhoto */
/** @typedef {{ here: number, kept: number, aside: number, photosHere: number, photosAside: number, unsaved: number }} Counts */

/** The day of entries that belong to no day, such as measurements of the clock. */
export const anyDay = "";

export class Outbox {
    /** @param {IDBDatabase} db @param {string} device */
    constructor(db, device) {
        this.db = db;
        this.device = device;
        /** What the phone's storage would not take; held in memory and tried again. @type {Held[]} */
        this.unsaved = [];
    }

    static async open() {
        const db = await openDatabase();
        return new Outbox(db, await deviceOf(db));
    }

    /**
     * Keeps entries on this phone; fulfilled when they are safe there. Other tabs of this phone wait their turn.
     * @param {string} day
     * @param {Entry[]} entries
     * @param {((sameDay: Held[]) => boolean) | null} unless when true of what is there already, nothing is kept
     * @param {HeldPhoto | null} photo kept in the same transaction
     * @returns {Promise<Held[]>} what was kept
     */
    async add(day, entries, unless = null, photo = null) {
        /** @type {Held[]} */
        const held = entries.map((entry) => ({ id: entry.id, day: entry.kind === "clock.offset" ? anyDay : day, device: this.device, entry, state: "here", reason: null }));
        try {
            const kept = await write(this.db, ["entries", "photos"], (store, done) => {
                const put = () => {
                    for (const one of held) store("entries").add(one);
                    if (photo) store("photos").add(photo);
                    done.result = held;
                };
                if (!unless) return put();
                const there = store("entries").index("day").getAll(day);
                there.onsuccess = () => (unless(there.result) ? (done.result = []) : put());
            });
            return /** @type {Held[]} */ (kept);
        } catch (cause) {
            // Full or broken storage: what was tapped is held as long as the page lives, shown as unsafe, and sent all the same.
            this.unsaved.push(...held);
            throw new NotSaved(cause);
        }
    }

    /** Tries again to keep what the storage would not take. */
    async saveUnsaved() {
        if (this.unsaved.length === 0) return;
        const again = [...this.unsaved];
        try {
            await write(this.db, ["entries"], (store) => again.forEach((one) => store("entries").put(one)));
            this.unsaved = this.unsaved.filter((one) => !again.includes(one));
        } catch {
            // Still full; the counts say so.
        }
    }

    /** Entries made here about a day, in the order of making. @param {string} day @returns {Promise<Held[]>} */
    async ofDay(day) {
        const own = await read(this.db, "entries", (store) => /** @type {IDBRequest<Held[]>} */ (store.index("day").getAll(day)));
        const clock = await read(this.db, "entries", (store) => /** @type {IDBRequest<Held[]>} */ (store.index("day").getAll(anyDay)));
        return [...clock, ...own, ...this.unsaved];
    }

    /** Entries that are to be sent, the oldest first. @param {number} most @returns {Promise<Held[]>} */
    async waiting(most) {
        const here = await read(this.db, "entries", (store) => /** @type {IDBRequest<Held[]>} */ (store.index("state").getAll("here", most)));
        return [...here, ...this.unsaved.filter((one) => one.state === "here")].slice(0, most);
    }

    /** Entries that the bench refused. @returns {Promise<Held[]>} */
    async aside() {
        const aside = await read(this.db, "entries", (store) => /** @type {IDBRequest<Held[]>} */ (store.index("state").getAll("aside")));
        return [...aside, ...this.unsaved.filter((one) => one.state === "aside")];
    }

    /** Changes what is known of where entries are. @param {Map<string, { state: State, reason: string | null }>} changes by id */
    async mark(changes) {
        for (const one of this.unsaved) Object.assign(one, changes.get(one.id) ?? {});
        this.unsaved = this.unsaved.filter((one) => one.state !== "kept");
        await write(this.db, ["entries"], (store) => {
            for (const [id, change] of changes) {
                const request = store("entries").get(id);
                request.onsuccess = () => {
                    const one = /** @type {Held | undefined} */ (request.result);
                    if (one && one.state !== "kept") store("entries").put({ ...one, ...change });
                    else if (one && change.state === "here") store("entries").put({ ...one, ...change });
                };
            }
        });
    }

    /** The oldest photo that is to be sent. @returns {Promise<HeldPhoto | null>} */
    async waitingPhoto() {
        const [photo] = await read(this.db, "photos", (store) => /** @type {IDBRequest<HeldPhoto[]>} */ (store.index("state").getAll("here", 1)));
        return photo ?? null;
    }

    /** A photo of this phone. @param {string} id @returns {Promise<HeldPhoto | undefined>} */
    photo(id) {
        return read(this.db, "photos", (store) => store.get(id));
    }

    /** @param {HeldPhoto} photo @param {State} state @param {string | null} reason */
    async markPhoto(photo, state, reason) {
        await write(this.db, ["photos"], (store) => store("photos").put({ ...photo, state, reason }));
    }

    /** @returns {Promise<Counts>} */
    async counts() {
        const count = (/** @type {"entries" | "photos"} */ store, /** @type {State} */ state) => read(this.db, store, (of) => of.index("state").count(state));
        const [here, kept, aside, photosHere, photosAside] = await Promise.all([count("entries", "here"), count("entries", "kept"), count("entries", "aside"), count("photos", "here"), count("photos", "aside")]);
        const unsaved = this.unsaved.filter((one) => one.state === "here").length;
        return { here: here + unsaved, kept, aside, photosHere, photosAside, unsaved };
    }

    /** A copy of all that is not on the bench, as a file that the bench can take in: the body of POST /api/entries. @returns {Promise<string>} */
    async copy() {
        const held = [...(await this.waiting(100_000)), ...(await this.aside())];
        return JSON.stringify({ device: this.device, sentAt: new Date().toISOString(), entries: held.map((one) => one.entry) }, null, 1);
    }

    /** A value kept under a name. @param {string} name @returns {Promise<unknown>} */
    note(name) {
        return read(this.db, "notes", (store) => store.get(name));
    }

    /** @param {string} name @param {unknown} value */
    async setNote(name, value) {
        await write(this.db, ["notes"], (store) => store("notes").put(value, name));
    }
}

/** The phone's storage would not take a tap. */
export class NotSaved extends Error {
    /** @param {unknown} cause */
    constructor(cause) {
        super("This phone's storage would not take the last tap. It is held while this page stays open, and sent when the bench answers.", { cause });
    }
}

const cookieName = "coolproof-device";

/**
 * This device's UUID: one in the database, the local storage and the cookie, so that clearing one of them makes no new device.
 * @param {IDBDatabase} db
 */
async function deviceOf(db) {
    const cookie = document.cookie.split("; ").find((pair) => pair.startsWith(`${cookieName}=`))?.slice(cookieName.length + 1);
    const known = [/** @type {unknown} */ (await read(db, "notes", (store) => store.get("device"))), local("get"), cookie].find(isUuid);
    const device = /** @type {string} */ (known ?? randomUuid());
    await write(db, ["notes"], (store) => store("notes").put(device, "device"));
    local("set", device);
    if (cookie !== device) document.cookie = `${cookieName}=${device}; path=/; max-age=34560000; samesite=lax`;
    return device;
}

/** @param {unknown} text */
const isUuid = (text) => typeof text === "string" && /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/.test(text) && !text.startsWith("00000000-0000-0000");

/** @param {"get" | "set"} what @param {string} device @returns {string | null} */
function local(what, device = "") {
    try {
        if (what === "get") return localStorage.getItem(cookieName);
        localStorage.setItem(cookieName, device);
    } catch {
        // Forbidden by the browser's settings: the database has it.
    }
    return null;
}

// crypto.randomUUID is missing on plain http.
function randomUuid() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
    return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
