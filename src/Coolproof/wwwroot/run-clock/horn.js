// The horn: three pips before go, a long one at go, three blasts at the planned end. Laid on the sound card's own clock beforehand, so that it comes in time
// though the page's timers are held back while the screen is off.

const pips = [
    { beforeMs: 3000, hz: 660, s: 0.12 }, { beforeMs: 2000, hz: 660, s: 0.12 }, { beforeMs: 1000, hz: 660, s: 0.12 }, { beforeMs: 0, hz: 990, s: 0.6 },
];
const blasts = [0, 450, 900];
const driftS = 0.12;

/** What is to sound: instants by this device's clock, ms since 1970. @typedef {{ key: string, goMs: number, endMs: number | null }} Plan */

export class Horn {
    constructor() {
        /** @type {AudioContext | null} */
        this.sound = null;
        /** @type {Plan | null} */
        this.plan = null;
        /** @type {OscillatorNode[]} */
        this.laid = [];
        /** When the horn comes, on the sound card's clock. @type {number | null} */
        this.hornAt = null;
    }

    /** Browsers let a page sound only after a touch: to be called in each. */
    unlock() {
        try {
            this.sound ??= new AudioContext({ latencyHint: "interactive" });
            if (this.sound.state !== "running") void this.sound.resume().catch(() => {});
        } catch {
            // No sound on this device: the page flashes and shakes instead.
        }
    }

    /** Whether it can be heard. */
    get ready() {
        return this.sound?.state === "running";
    }

    /** Lays what is to sound, or takes it away; to be called often. @param {Plan | null} plan */
    keep(plan) {
        const sound = this.sound;
        if (!sound || !this.ready) return;
        const wanted = plan?.endMs ? sound.currentTime + (plan.endMs - Date.now()) / 1000 : null;
        const hornAt = wanted !== null && wanted > sound.currentTime ? wanted : null; // what is past is not sounded afterwards
        const heard = this.hornAt !== null && sound.currentTime >= this.hornAt;
        const laid = hornAt === null ? this.hornAt === null : this.hornAt !== null && Math.abs(hornAt - this.hornAt) < driftS;
        if (plan?.key === this.plan?.key && (heard || laid)) return;
        if (!heard) this.hush(); // a blast that has begun ends by itself
        this.plan = plan;
        this.hornAt = hornAt;
        if (!plan) return;
        const at = (/** @type {number} */ ms) => sound.currentTime + (ms - Date.now()) / 1000;
        for (const pip of pips) this.lay(at(plan.goMs - pip.beforeMs), pip.hz, pip.s, 0.5);
        if (hornAt === null) return;
        for (const afterMs of blasts) {
            this.lay(hornAt + afterMs / 1000, 740, 0.35, 0.9);
            this.lay(hornAt + afterMs / 1000, 932, 0.35, 0.9);
        }
    }

    /** When the horn of the plan was heard, by this device's clock, ms; null when it was not (yet). A sound card that stood still sounds late. */
    get heardAt() {
        if (!this.sound || this.hornAt === null || this.sound.currentTime < this.hornAt) return null;
        return Date.now() - (this.sound.currentTime - this.hornAt) * 1000;
    }

    hush() {
        for (const tone of this.laid) {
            try {
                tone.stop();
            } catch {
                // Ended already.
            }
        }
        this.laid = [];
    }

    /** @param {number} at on the sound card's clock @param {number} hz @param {number} s @param {number} loud */
    lay(at, hz, s, loud) {
        const sound = this.sound;
        if (!sound || at < sound.currentTime) return;
        const tone = new OscillatorNode(sound, { type: "square", frequency: hz });
        const gain = new GainNode(sound, { gain: 0 });
        gain.gain.setValueAtTime(0, at);
        gain.gain.linearRampToValueAtTime(loud * 0.6, at + 0.01);
        gain.gain.setValueAtTime(loud * 0.6, at + s - 0.02);
        gain.gain.linearRampToValueAtTime(0, at + s);
        tone.connect(gain).connect(sound.destination);
        tone.start(at);
        tone.stop(at + s + 0.02);
        tone.onended = () => (this.laid = this.laid.filter((other) => other !== tone));
        this.laid.push(tone);
    }
}
