// The run clock: what is done when a button is pressed. Every act is one or more entries; what the page shows follows from them.
import { canStayAwake, shake, stayAwake } from "./awake.js";
import { entry, number, text, uuid7 } from "./entries.js";
import { Horn } from "./horn.js";
import { Journal } from "./journal.js";
import { shrink } from "./photos.js";
import { pace, simulated } from "./rehearsal.js";
import { ask } from "./sending.js";
import { hide } from "./sheets.js";
import { currentRun, nextNumber, plannedOption, runNow } from "./step.js";

/** @typedef {import("./entries.js").Entry} Entry */
/** @typedef {import("./entries.js").Body} Body */
/** @typedef {import("./lines.js").Line} Line */
/** @typedef {import("./runs.js").Run} Run */
/** @typedef {import("./runs.js").Shot} Shot */
/** @typedef {{ option: string | null, kind: string, pack: string | null, driveS: number, number: number }} Draft */
/** @typedef {{ instrument: string | null, spot: string, hold: string, surface: string }} Aim */

const usualDriveS = 360;
const hornGraceMs = 1_500;
const usualLeadS = 20;
const displayTries = 40;
const displayAgainMs = 300;

export class RunClock {
    /** @param {Journal} journal */
    constructor(journal) {
        this.journal = journal;
        this.horn = new Horn();
        /** Seconds of the countdown. */
        this.leadS = usualLeadS;
        /** @type {Partial<Draft>} */
        this.draft = {};
        /** @type {Partial<Aim>} */
        this.aimed = {};
        this.settingUp = false;
        /** A run that is looked at though it isn't the current one. @type {string | null} */
        this.viewed = null;
        /** @type {{ says: string, entries: Entry[] } | null} */
        this.last = null;
        /** @type {Set<string>} */
        this.sawDifferences = new Set();
        /** Runs of which a person said that they drive on after a missed horn. @type {Set<string>} */
        this.driving = new Set();
        /** @type {string | null} */
        this.cameraShot = null;
        this.cameraOpen = false;
        this.tickedAt = -Infinity;
        /** @type {string} */
        this.unit = "c";
        /** @type {(shot: string) => void} */
        this.openCamera = () => {};
        /** @type {(trouble: string) => void} */
        this.tell = () => {};
        /** @type {(at: number) => void} */
        this.rang = () => {};
    }

    /** What is kept on this phone beside entries. */
    async recall() {
        this.draft = /** @type {Partial<Draft>} */ ((await this.journal.outbox.note(`draft ${this.journal.dayId}`)) ?? {});
        this.aimed = /** @type {Partial<Aim>} */ ((await this.journal.outbox.note("aim")) ?? {});
        this.cameraShot = /** @type {string | null} */ ((await this.journal.outbox.note("camera")) ?? null);
        const lead = await this.journal.outbox.note("lead");
        if (typeof lead === "number") this.leadS = lead;
    }

    get day() {
        return this.journal.day;
    }

    get things() {
        return this.journal.bench.things;
    }

    get device() {
        return this.journal.outbox.device;
    }

    /** What this device does; null before it said so. */
    get role() {
        return this.day.roles.get(this.device) ?? null;
    }

    now() {
        return this.journal.now();
    }

    /** An instant of this device's clock by the bench's. @param {number} at */
    serverAt(at) {
        return at - this.journal.clock.inForce(at);
    }

    /** The run that is shown; null before the next one. @returns {Run | null} */
    run() {
        if (this.viewed) return this.day.runs.find((run) => run.ids.includes(this.viewed ?? "")) ?? null;
        const run = currentRun(this.day, this.now(), this.things.shots);
        if (!run) return null;
        const step = runNow(run, this.now(), this.things.shots).step;
        return this.settingUp && ["Done", "Abandoned", "Shooting", "Halted"].includes(step) ? null : run;
    }

    /** @param {Run | null} run */
    nowOf(run) {
        return run ? runNow(run, this.now(), this.things.shots) : null;
    }

    /** What the next run, or one that has not gone yet, will be. @param {Run | null} run @returns {Draft} */
    draftOf(run) {
        const driveS = this.draft.driveS ?? this.things.driveS ?? usualDriveS;
        if (run) return { option: text(run.fields, "option"), kind: text(run.fields, "kind") ?? "test", pack: text(run.fields, "pack"), driveS, number: number(run.fields, "number") ?? 0 };
        return { option: this.draft.option ?? this.nextOption().option, kind: this.draft.kind ?? "test", pack: this.draft.pack ?? null, driveS, number: nextNumber(this.day) };
    }

    /** The option that is next unless somebody chooses another, and by what: the plan, else the bench's advice. @returns {{ option: string | null, by: string }} */
    nextOption() {
        const planned = plannedOption(this.day, this.things.plan);
        if (planned) return { option: planned, by: "next by the plan" };
        const advised = this.things.advisedAfter === this.day.runs.length ? this.things.advised : null;
        return { option: advised, by: advised ? "advised next" : "" };
    }

    /** @param {Run | null} run */
    optionOf(run) {
        const id = this.draftOf(run).option;
        return this.things.options.find((option) => option.id === id) ?? null;
    }

    /** @param {string} device */
    deviceName(device) {
        if (device === this.device) return "this device";
        const known = this.things.devices.find((one) => one.id === device);
        return known?.name || (this.day.roles.get(device) ? `the ${this.day.roles.get(device)}'s device` : "the other device");
    }

    /** @returns {Aim} */
    get aim() {
        const guns = this.things.instruments;
        const known = guns.find((gun) => gun.id === this.aimed.instrument) ?? guns.find((gun) => gun.type === "gun") ?? guns[0];
        return { instrument: known?.id ?? null, spot: this.aimed.spot ?? "can", hold: this.aimed.hold ?? "single", surface: this.aimed.surface ?? this.things.surface };
    }

    /** The unit on an instrument's display. @param {string | null} instrument */
    unitOf(instrument) {
        return this.things.instruments.find((one) => one.id === instrument)?.unit ?? this.unit;
    }

    /** @param {string} id @returns {{ run: Run, shot: Shot } | null} */
    findShot(id) {
        for (const run of this.day.runs) for (const shot of run.shots) if (shot.id === id) return { run, shot };
        return null;
    }

    // What a person does. Each says what was noted, and keeps it for "take back".

    /** @param {string} says @param {Entry[]} entries @param {Parameters<Journal["write"]>[1]} with_ */
    async say(says, entries, with_ = {}) {
        this.last = { says, entries };
        return this.journal.write(entries, with_);
    }

    /** The run, begun if need be, and what must be said to begin it. @param {Run | null} run @param {number} at @returns {{ id: string, entries: Entry[] }} */
    begun(run, at) {
        if (run && runNow(run, this.now(), this.things.shots).step === "Ready") return { id: run.id, entries: [] };
        const draft = this.draftOf(null);
        const id = uuid7(Date.now());
        const entries = [entry("run.begin", id, { day: this.journal.dayId, option: draft.option, kind: draft.kind, number: draft.number }, at)];
        if (draft.pack) entries.push(entry("run.set", id, { pack: draft.pack }, at));
        this.settingUp = false;
        this.viewed = null;
        this.draft = { driveS: this.draft.driveS };
        void this.journal.outbox.setNote(`draft ${this.journal.dayId}`, this.draft);
        return { id, entries };
    }

    /** @param {Run | null} run @param {number} at */
    async startCountdown(run, at) {
        if (this.journal.writing > 0) return; // a run is being begun: a second press means the same
        const driveS = this.draftOf(null).driveS;
        const { id, entries } = this.begun(run, at);
        const countdown = entry("run.countdown", id, { seconds: this.leadS, driveS }, at);
        this.last = { says: "Countdown", entries: [countdown] };
        await this.journal.write([...entries, countdown]);
    }

    /** @param {Run | null} run @param {number} at */
    async goNow(run, at) {
        if (this.journal.writing > 0) return;
        const driveS = this.draftOf(null).driveS;
        const { id, entries } = this.begun(run, at);
        const go = [entry("run.countdown", id, { seconds: 0, driveS }, at), entry("run.go", id, {}, at)];
        this.last = { says: "Go", entries: go };
        await this.journal.write([...entries, ...go]);
    }

    /** Go before the countdown is over. @param {Run} run @param {number} at */
    go(run, at) {
        return this.say("Go", [entry("run.go", run.id, {}, at)]);
    }

    /** @param {Run} run @param {number} at */
    async cancelCountdown(run, at) {
        if (run.countdown && run.go) await this.journal.takeBack([run.go.counted.said], at);
        this.last = null;
    }

    /** @param {Run} run @param {number} at */
    stop(run, at) {
        return this.say("End of hard driving", [entry("run.stop", run.id, { by: "tap" }, at)]);
    }

    /** A stop that is said afterwards. @param {Run} run @param {number} at @param {number} secondsAgo */
    stopAt(run, at, secondsAgo) {
        const atLeast = Math.max(0, Math.min(7200, Math.round(secondsAgo * 1000) / 1000));
        return this.say("End of hard driving, set back", [entry("run.stop", run.id, { by: "later", secondsAgo: atLeast }, at)]);
    }

    /** @param {Run} run @param {number} at @param {number} secondsAgo */
    halt(run, at, secondsAgo) {
        shake(60);
        return this.say(secondsAgo > 0 ? `Halted ${secondsAgo} s ago` : "Halted", [entry("run.halt", run.id, secondsAgo > 0 ? { secondsAgo } : {}, at)]);
    }

    /** Down, up, lap, fan dead, power off. @param {Run} run @param {string} kind @param {number} at */
    mark(run, kind, at) {
        const says = { "run.down": "Down", "run.up": "Up again", "run.lap": "Lap", "run.fan-dead": "Fan dead", "run.power-off": "Power off" }[kind] ?? kind;
        return this.say(says, [entry(kind, run.id, {}, at)]);
    }

    /** @param {Run} run @param {string} because @param {number} at */
    abandon(run, because, at) {
        return this.say("Given up", [entry("run.abandon", run.id, { because }, at)]);
    }

    /** @param {Run} run @param {number} at */
    async takeBackAbandon(run, at) {
        const said = [...this.journal.bench.entries.values(), ...[...this.journal.own.values()].map((one) => one.entry)].filter((one) => one.kind === "run.abandon" && run.ids.includes(one.about));
        await this.journal.takeBack([...new Map(said.map((one) => [one.id, one])).values()], at);
    }

    /** @param {Run} run @param {"go" | "stop" | "halt"} event @param {number} at */
    async takeBackStamp(run, event, at) {
        const stamp = run[event];
        if (!stamp) return;
        if (event === "stop") this.drivesOn(run);
        await this.journal.takeBack([stamp.counted.said, ...stamp.others.map((line) => line.said)], at);
        this.last = null;
    }

    /** @param {Run} run */
    drivesOn(run) {
        this.driving.add(run.id);
        this.journal.changed();
    }

    /** @param {Line} line @param {number} seconds @param {number} at */
    nudge(line, seconds, at) {
        return this.say(`${seconds > 0 ? "+" : "−"}${Math.abs(seconds)} s`, [entry("nudge", line.said.about, { of: line.id, seconds }, at)]);
    }

    /** @param {Run} run @param {string} event @param {string} stamp @param {number} at */
    choose(run, event, stamp, at) {
        return this.say("Another device counts", [entry("clock.choice", run.id, { run: run.id, event, entry: stamp }, at)]);
    }

    /** @param {string} a @param {string} b @param {boolean} same @param {number} at */
    decide(a, b, same, at) {
        return this.say(same ? "The same run" : "Two runs", [entry(same ? "run.same" : "run.two", a, { other: b }, at)]);
    }

    /** @param {Run | null} run @param {"before" | "after"} when @param {boolean | null} turning @param {number} at */
    fan(run, when, turning, at) {
        const { id, entries } = when === "before" && !(run && run.go) ? this.begun(run, at) : { id: /** @type {Run} */ (run).id, entries: [] };
        return this.say(turning === null ? "Fan not looked at" : turning ? "Fan turning" : "Fan not turning", [...entries, entry("run.fan", id, { when, turning }, at)]);
    }

    /** @param {Run | null} run @param {"before" | "after"} when @param {number} at */
    noFan(run, when, at) {
        const { id, entries } = when === "before" && !(run && run.go) ? this.begun(run, at) : { id: /** @type {Run} */ (run).id, entries: [] };
        return this.say("No fan", [...entries, entry("run.set", id, when === "before" ? { fan: "none" } : { fanAfterStop: "none" }, at)]);
    }

    /** @param {Run | null} run @param {Partial<Draft>} change @param {number} at */
    async setDraft(run, change, at) {
        if (run) {
            await this.say("Changed", [entry("run.set", run.id, /** @type {Body} */ (change), at)]);
            return;
        }
        this.draft = { ...this.draft, ...change };
        await this.journal.outbox.setNote(`draft ${this.journal.dayId}`, this.draft);
        this.journal.changed();
    }

    /** @param {Run} run @param {Body} fields @param {number} at */
    setRun(run, fields, at) {
        return this.say("Changed", [entry("run.set", run.id, fields, at)]);
    }

    /** @param {Run | null} run @param {string} way @param {number} at */
    beginCooling(run, way, at) {
        const { id, entries } = this.begun(run, at);
        return this.say("Cooling begins", [...entries, entry("cooldown.begin", uuid7(Date.now()), { run: id, way }, at)]);
    }

    /** @param {{ id: string }} cooling @param {number} at */
    endCooling(cooling, at) {
        return this.say("Cooling ends", [entry("cooldown.end", cooling.id, {}, at)]);
    }

    /** @param {Run} run @param {number} mah @param {number} at */
    charge(run, mah, at) {
        return this.say(`${mah} mAh`, [entry("charge", run.id, { run: run.id, mah }, at)]);
    }

    /** @param {Body} fields @param {number} at */
    weather(fields, at) {
        return this.say("Weather", [entry("weather", this.journal.dayId, { day: this.journal.dayId, ...fields }, at)]);
    }

    /** @param {string} role @param {number} at */
    setRole(role, at) {
        return this.say("This device", [entry("device.set", this.device, { role }, at)]);
    }

    /** @param {Partial<Aim>} change */
    async setAim(change) {
        this.aimed = { ...this.aimed, ...change };
        await this.journal.outbox.setNote("aim", this.aimed);
        this.journal.changed();
    }

    nextRun() {
        this.settingUp = true;
        this.viewed = null;
        this.journal.changed();
    }

    // Shots.

    /** @param {Run} run @param {number} at @param {string} id */
    shoot(run, at, id = uuid7(Date.now())) {
        shake(30);
        const aim = this.aim;
        const place = run.shots.length + 1;
        const said = this.say(`Shot ${place}`, [entry("shot", id, { run: run.id, instrument: aim.instrument, spot: aim.spot, hold: aim.hold, surface: aim.surface }, at)]);
        return simulated() ? said.then(() => this.display(id)) : said;
    }

    /** The number on the made-up gun's display, once the bench has the shot. @param {string} id */
    async display(id) {
        for (let tries = 0; tries < displayTries; tries++) {
            this.journal.sending.now();
            const answer = await ask(`/clock/${this.journal.dayId}/gun/${id}`).catch(() => null);
            const shot = this.findShot(id)?.shot;
            if (!shot || shot.readC !== null) return;
            if (answer?.status === 200) {
                const { value, unit } = await answer.json();
                await this.journal.write([entry("shot.read", id, { shot: id, value, unit }, Date.now())]);
                return;
            }
            await new Promise((resolve) => setTimeout(resolve, displayAgainMs));
        }
    }

    /** The shot is kept before the camera, which may close this page, has opened. @param {Run} run @param {number} at */
    shootAndPhotograph(run, at) {
        const id = uuid7(Date.now());
        this.photograph(id); // within the press: browsers open the camera only then
        return this.shoot(run, at, id);
    }

    /** @param {string} shot */
    photograph(shot) {
        this.cameraShot = shot;
        this.cameraOpen = true;
        void this.journal.outbox.setNote("camera", shot);
        this.openCamera(shot);
    }

    /** The shot whose photo didn't come, after the camera closed the page. @returns {Shot | null} */
    shotOfCamera() {
        if (!this.cameraShot || this.cameraOpen) return null;
        const shot = this.findShot(this.cameraShot)?.shot ?? null;
        return shot && shot.readC === null && shot.photo === null ? shot : null;
    }

    /** @param {File | null} file null when the camera was left */
    async photographed(file) {
        const shot = this.cameraShot;
        this.cameraOpen = false;
        this.cameraShot = null;
        await this.journal.outbox.setNote("camera", null);
        if (!file || !shot) return void this.journal.changed();
        const at = Date.now();
        try {
            const photo = await shrink(file);
            const says = [
                entry("photo", photo.id, { about: shot, type: photo.type, bytes: photo.bytes.byteLength, width: photo.width, height: photo.height }, at),
                entry("shot.photo", shot, { shot, photo: photo.id }, at),
            ];
            await this.say("Photo", says, { photo: { id: photo.id, day: this.journal.dayId, about: shot, type: photo.type, bytes: photo.bytes, state: "here", reason: null } });
        } catch (cause) {
            this.tell(`${cause instanceof Error ? cause.message : cause} The shot and its time are kept: type the number.`);
        }
    }

    /** @param {Shot} shot @param {number} value @param {string} unit @param {number} at */
    read(shot, value, unit, at) {
        return this.say(`${value} °${unit.toUpperCase()}`, [entry("shot.read", shot.id, { shot: shot.id, value, unit }, at)]);
    }

    /** @param {string} shot @param {number} at */
    removeShot(shot, at) {
        return this.say("Shot taken out", [entry("remove", shot, {}, at)]);
    }

    closeSheet() {
        hide();
    }

    /** @param {string} difference */
    seen(difference) {
        return this.sawDifferences.has(difference);
    }

    /** @param {string} difference */
    sawIt(difference) {
        this.sawDifferences.add(difference);
        this.journal.changed();
    }

    // The horn, and what a page that slept missed of it.

    /** Whether this device's horn stamps the end of a run: it began the countdown, or it is the clock. @param {Run} run */
    stamps(run) {
        return run.countdown?.device === this.device || this.role === "clock";
    }

    /** Looks at the clock: sounds, stamps, keeps the screen on. */
    tick() {
        const shown = this.run();
        pace(this.nowOf(shown), (shown?.coolings ?? []).some((cooling) => cooling.end === null));
        const slept = this.journal.clock.look();
        if (this.journal.clock.misread(Date.now())) void this.journal.sayClock();
        const run = this.run();
        const now = this.nowOf(run);
        const at = this.now();
        if (!run || !now || !run.go || !run.countdown || !["CountingDown", "Driving", "Down"].includes(now.step)) {
            this.horn.keep(null);
            void stayAwake(now !== null && ["Rolling", "Halted", "Shooting"].includes(now.step));
        } else {
            const end = run.go.at + run.countdown.driveS * 1000;
            this.horn.keep({ key: `${run.id} ${run.go.counted.id}`, goMs: this.journal.clock.toDevice(run.go.at), endMs: this.journal.clock.toDevice(end) });
            void stayAwake(true);
            // A horn counts where it was heard, or seen on a page that was open and awake. One that nobody could notice has not ended anything.
            const seen = document.visibilityState === "visible" && this.tickedAt > -Infinity && at - end < hornGraceMs;
            const heard = this.horn.heardAt !== null && Math.abs(this.serverAt(this.horn.heardAt) - end) < hornGraceMs;
            if (at >= end && this.tickedAt < end && !this.driving.has(run.id) && (seen || heard)) this.ring(run, end);
        }
        this.tickedAt = at;
        if (slept) {
            this.journal.sending.now();
            this.journal.bench.fetch();
        }
    }

    /** @param {Run} run @param {number} end by the bench's clock */
    ring(run, end) {
        shake([400, 150, 400, 150, 400]);
        this.rang(end);
        if (!this.stamps(run)) return;
        const at = Date.now();
        const secondsAgo = Math.max(0, Math.round(this.serverAt(at) - end) / 1000);
        const ids = run.ids;
        // Two tabs of one phone have one horn.
        const rung = (/** @type {import("./outbox.js").Held[]} */ held) => held.some((one) => one.entry.kind === "run.stop" && ids.includes(one.entry.about) && (one.entry.body.by === "horn" || Date.parse(one.entry.at) > at - hornGraceMs));
        void this.say("The horn: end of hard driving", [entry("run.stop", run.id, { by: "horn", secondsAgo }, at)], { unless: rung });
    }

    /** Whether the planned end went by while this page slept, so that nobody heard the horn. @param {Run} run @param {import("./step.js").Now} now */
    hornMissed(run, now) {
        return (now.step === "Driving" || now.step === "Down") && now.leftS !== null && now.leftS < -hornGraceMs / 1000 && !this.driving.has(run.id) && this.stamps(run);
    }

    /** What this device can't do here, in words. @returns {string[]} */
    limits() {
        const said = [];
        if (!this.horn.ready) said.push("The horn is silent until the page is touched once.");
        if (!canStayAwake) said.push("This address can't keep the screen on: set the phone's screen to stay on.");
        return said;
    }
}
