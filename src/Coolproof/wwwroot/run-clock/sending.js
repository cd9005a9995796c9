// Sends what is on this phone only: on load, when the network or the page comes back, after each tap and on a timer.

/** @typedef {import("./outbox.js").Outbox} Outbox */
/** @typedef {import("./outbox.js").Held} Held */
/** @typedef {"rest" | "sending" | "unreachable" | "unpaired" | "refused"} SendingState */

const batch = 200;
const patienceMs = 10_000;
const photoPatienceMs = 60_000;
const againMs = 250;
const retryMs = [1_000, 2_000, 4_000, 8_000];
const restMs = 15_000;

export class Sending {
    /**
     * @param {Outbox} outbox
     * @param {(state: SendingState, sentSome: boolean) => void} told after each pass
     */
    constructor(outbox, told) {
        this.outbox = outbox;
        this.told = told;
        /** @type {SendingState} */
        this.state = "rest";
        this.failures = 0;
        this.busy = false;
        this.again = false;
        /** @type {ReturnType<typeof setTimeout> | undefined} */
        this.timer = undefined;
    }

    start() {
        window.addEventListener("online", () => this.now());
        document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.now());
        this.now();
    }

    /** Sends now, or once more when a pass is under way. */
    now() {
        if (this.busy) {
            this.again = true;
            return;
        }
        clearTimeout(this.timer);
        void this.pass();
    }

    async pass() {
        this.busy = true;
        this.again = false;
        let sent = false;
        try {
            await this.outbox.saveUnsaved();
            sent = await this.entries();
            sent = (await this.photos()) || sent;
            if (this.state !== "refused") this.state = "rest";
            this.failures = 0;
        } catch (cause) {
            this.state = cause instanceof Unpaired ? "unpaired" : "unreachable";
            this.failures++;
        } finally {
            this.busy = false;
            this.told(this.state, sent);
            // What asked meanwhile (a tap, the network that came back) is not kept waiting by the failure before it.
            const wait = this.again ? againMs : this.failures > 0 ? retryMs[Math.min(this.failures, retryMs.length) - 1] : restMs;
            this.timer = setTimeout(() => this.now(), wait);
        }
    }

    /** Readings go before photos. @returns {Promise<boolean>} whether anything was sent */
    async entries() {
        let sent = false;
        let most = batch;
        this.state = "sending";
        for (;;) {
            const held = await this.outbox.waiting(most);
            if (held.length === 0) break;
            const answer = await post("/api/entries", JSON.stringify({ device: this.outbox.device, sentAt: new Date().toISOString(), entries: held.map((one) => one.entry) }));
            if (answer.ok) {
                const kept = new Set(/** @type {string[]} */ ((await answer.json()).kept ?? []));
                const listed = held.filter((one) => kept.has(one.id));
                if (listed.length === 0) throw new Error("the bench lists none of the ids that it was sent");
                await this.outbox.mark(new Map(listed.map((one) => [one.id, { state: /** @type {const} */ ("kept"), reason: null }])));
                sent = true;
                most = batch;
            } else if ((answer.status === 400 || answer.status === 422) && (await this.setAside(held, answer))) {
                this.state = "refused";
            } else if ((answer.status === 413 || answer.status === 400 || answer.status === 422) && held.length > 1) {
                most = Math.ceil(held.length / 2); // find the one that is at fault by halves
            } else {
                throw new Error(`the bench answered ${answer.status}`);
            }
        }
        return sent;
    }

    /** Sets aside what the bench named as faulty. @param {Held[]} held @param {Response} answer @returns {Promise<boolean>} whether anything was named */
    async setAside(held, answer) {
        const problem = await answer.json().catch(() => null);
        /** @type {Map<string, { state: "aside", reason: string }>} */
        const faulty = new Map();
        for (const fault of Array.isArray(problem?.errors) ? problem.errors : []) {
            const one = held.find((candidate) => candidate.id === fault.entry) ?? (/^\d+$/.test(fault.entry ?? "") ? held[Number(fault.entry)] : undefined);
            if (one) faulty.set(one.id, { state: "aside", reason: [fault.field, fault.reason, fault.remedy].filter(Boolean).join(": ") });
        }
        if (faulty.size > 0) await this.outbox.mark(faulty);
        return faulty.size > 0;
    }

    /** @returns {Promise<boolean>} whether anything was sent */
    async photos() {
        for (let sent = false; ; sent = true) {
            const photo = await this.outbox.waitingPhoto();
            if (!photo) return sent;
            const answer = await ask(`/api/photos/${photo.id}`, { method: "PUT", body: photo.bytes, headers: { "content-type": photo.type } }, photoPatienceMs);
            if (answer.ok) await this.outbox.markPhoto(photo, "kept", null);
            else if ([400, 409, 413, 415, 422].includes(answer.status)) await this.outbox.markPhoto(photo, "aside", `the bench refused it (${answer.status})`);
            else throw new Error(`the bench answered ${answer.status}`);
        }
    }
}

/** This phone may not write to the bench (any more). */
export class Unpaired extends Error {}

/**
 * Asks the bench; throws where nobody answers in time or the phone isn't paired.
 * @param {string} path
 * @param {RequestInit} init
 * @param {number} waitMs
 */
export async function ask(path, init = {}, waitMs = patienceMs) {
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), waitMs);
    try {
        const answer = await fetch(path, { ...init, cache: "no-store", redirect: "manual", signal: patience.signal });
        if (answer.status === 401 || answer.status === 403 || answer.type === "opaqueredirect") throw new Unpaired();
        return answer;
    } finally {
        clearTimeout(timer);
    }
}

/** @param {string} path @param {string} body */
const post = (path, body) => ask(path, { method: "POST", body, headers: { "content-type": "application/json" } });
