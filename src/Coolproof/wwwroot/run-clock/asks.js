// What the clock asks beside the run: same or two, the air, the fan, what was missed, whose stamp counts. Each answer is one tap.
import { number, text } from "./entries.js";
import { askAir, askRole, askStopAgo, askWhyShort, typeReading } from "./questions.js";
import { airAsked } from "./step.js";
import { minutes, timeOfDay, word } from "./words.js";

/** @typedef {import("./clock.js").RunClock} RunClock */
/** @typedef {import("./runs.js").Run} Run */
/** @typedef {import("./step.js").Now} Now */
/** @typedef {import("./dom.js").Action} Action */
/** @typedef {{ id: string, text: string, actions: Action[] }} Ask */

const differsS = 0.5;
const shortS = 3;

/**
 * Asks, the most pressing first.
 * @param {RunClock} clock
 * @param {Run | null} run the run that is shown
 * @param {Now | null} now where it is
 * @returns {Ask[]}
 */
export function asksOf(clock, run, now) {
    const between = !run || !now || ["Ready", "Done", "Abandoned", "Shooting"].includes(now.step);
    return [
        missedHorn(clock, run, now), cameraGone(clock), ...(between || now?.step === "Halted" ? sameOrTwo(clock) : []), fan(clock, run, now), ...(run && !between || now?.step === "Shooting" || now?.step === "Done" ? differences(clock, run) : []),
        why(clock, run, now), between ? role(clock) : null, between && now?.step !== "Shooting" ? air(clock) : null,
    ].filter((ask) => ask !== null);
}

/** @param {RunClock} clock @param {Run | null} run @param {Now | null} now @returns {Ask | null} */
function missedHorn(clock, run, now) {
    if (!run || !now || !clock.hornMissed(run, now)) return null;
    const endsAt = /** @type {import("./runs.js").Clocked} */ (run.go).at + (run.countdown?.driveS ?? 0) * 1000;
    const agoS = (clock.now() - endsAt) / 1000;
    return {
        id: "missed", text: `The horn was missed: the planned end was ${minutes(agoS)} ago, and this page slept. When did hard driving end?`,
        actions: [
            { id: "missed-planned", label: "At the planned end", detail: "hold ½ s", firm: true, act: (at) => clock.stopAt(run, at, (clock.serverAt(at) - endsAt) / 1000) },
            { id: "missed-ago", label: "Some time ago", act: () => askStopAgo(clock, run) },
            { id: "missed-driving", label: "It still drives", act: () => clock.drivesOn(run) },
        ],
    };
}

/** @param {RunClock} clock @returns {Ask | null} */
function cameraGone(clock) {
    const shot = clock.shotOfCamera();
    if (!shot) return null;
    return {
        id: "camera", text: `The shot of ${timeOfDay(shot.at ?? shot.since)} is kept, but its photo didn't come: the camera closed this page.`,
        actions: [{ id: "camera-again", label: "Photo again", act: () => clock.photograph(shot.id) }, { id: "camera-type", label: "Type the number", act: () => typeReading(clock, shot.id) }],
    };
}

/** @param {RunClock} clock @returns {Ask[]} */
const sameOrTwo = (clock) => clock.day.offers.map((offer) => ({
    id: `offer-${offer.a}-${offer.b}`, text: `Two phones began run ${offer.number} while they could not see each other. Is it one run or two?`,
    actions: [
        { id: `same-${offer.a}-${offer.b}`, label: "The same run", act: (/** @type {number} */ at) => clock.decide(offer.a, offer.b, true, at) },
        { id: `two-${offer.a}-${offer.b}`, label: "Two runs", act: (/** @type {number} */ at) => clock.decide(offer.a, offer.b, false, at) },
    ],
}));

/** @param {RunClock} clock @param {Run | null} run @param {Now | null} now @returns {Ask | null} */
function fan(clock, run, now) {
    const before = !run || now?.step === "Ready" || now?.step === "CountingDown";
    const after = now?.step === "Halted" || now?.step === "Shooting";
    if (!before && !after) return null;
    const option = clock.optionOf(run);
    if (!option || option.fan === false || run?.fields.fan === "none" || (after && run?.fields.fanAfterStop === "none")) return null;
    if (run && (before ? run.fanBefore : run.fanAfter)) return null;
    const when = before ? "before" : "after";
    return {
        id: `fan-${when}`, text: before ? "Is the fan turning?" : "Is the fan still turning?",
        actions: [
            { id: `fan-${when}-yes`, label: "Turning", act: (at) => clock.fan(run, when, true, at) },
            { id: `fan-${when}-no`, label: "Not turning", act: (at) => clock.fan(run, when, false, at) },
            option.fan === null
                ? { id: `fan-${when}-none`, label: "No fan", act: (at) => clock.noFan(run, when, at) }
                : { id: `fan-${when}-unseen`, label: "Didn't look", act: (at) => clock.fan(run, when, null, at) },
        ],
    };
}

/** Where phones differ, whose stamp counts, and one tap to change it. @param {RunClock} clock @param {Run | null} run @returns {Ask[]} */
function differences(clock, run) {
    if (!run) return [];
    /** @type {Ask[]} */
    const asks = [];
    for (const [event, stamp] of /** @type {const} */ ([["go", run.go], ["stop", run.stop], ["halt", run.halt]])) {
        const other = stamp?.others.find((line) => line.said.device !== stamp.counted.said.device);
        if (!stamp || !other || stamp.spreadS < differsS || clock.seen(`${event}-${stamp.counted.id}-${other.id}`)) continue;
        const seen = `${event}-${stamp.counted.id}-${other.id}`;
        asks.push({
            id: `differ-${seen}`,
            text: `${word(`run.${event}`)}: two phones differ by ${stamp.spreadS.toFixed(1)} s. ${clock.deviceName(stamp.counted.said.device)} counts.`,
            actions: [
                { id: `take-${other.id}`, label: `Let ${clock.deviceName(other.said.device)} count`, act: (at) => clock.choose(run, event, other.id, at) },
                { id: `keep-${other.id}`, label: "Leave it", act: () => clock.sawIt(seen) },
            ],
        });
    }
    return asks;
}

/** @param {RunClock} clock @param {Run | null} run @param {Now | null} now @returns {Ask | null} */
function why(clock, run, now) {
    if (!run?.stop || !run.go || !run.countdown || !now || text(run.fields, "cutShort") !== null || now.step === "Abandoned") return null;
    const earlyS = run.countdown.driveS - (run.stop.at - run.go.at) / 1000;
    if (earlyS < shortS || number(run.fields, "driveS") !== null) return null;
    return {
        id: "why-short", text: `Hard driving ended ${minutes(earlyS)} early. It counts at its true length.`,
        actions: [{ id: "say-why", label: "Say why", act: () => askWhyShort(clock, run) }],
    };
}

/** @param {RunClock} clock @returns {Ask | null} */
function role(clock) {
    if (clock.role) return null;
    return {
        id: "role", text: "Is this the only phone today? The run can go without an answer.",
        actions: [{ id: "role-alone", label: "The only one", act: (at) => clock.setRole("any", at) }, { id: "role-say", label: "One of several", act: () => askRole(clock) }],
    };
}

/** @param {RunClock} clock @returns {Ask | null} */
function air(clock) {
    if (!airAsked(clock.day, clock.now())) return null;
    const latest = clock.day.weather.filter((weather) => typeof weather.body.airC === "number").at(-1);
    return {
        id: "air", text: latest ? `The air was noted ${minutes((clock.now() - latest.at) / 1000)} ago: look again.` : "No air is noted yet.",
        actions: [{ id: "air-note", label: "Note the air", act: () => askAir(clock) }],
    };
}
