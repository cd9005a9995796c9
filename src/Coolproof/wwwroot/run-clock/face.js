// What the clock shows in each step: the digits, one sentence, one large button, and what else is a tap away.
import { number, text } from "./entries.js";
import { askAbandon, askAim, askCharge, askCooling, askOption, askThisRun } from "./questions.js";
import { minutes, minutesLeft, runTitle, word } from "./words.js";

/** @typedef {import("./clock.js").RunClock} RunClock */
/** @typedef {import("./runs.js").Run} Run */
/** @typedef {import("./step.js").Now} Now */
/** @typedef {import("./dom.js").Action} Action */
/** @typedef {{ step: string, title: string, digits: string, line: string, caution?: boolean, primary: Action | null, secondary: Action[], ago?: Action[], next: ((at: number) => void) | null }} Face */

const longRestS = 600;
const lateS = 180;
const agoS = [10, 20, 30];

/** @param {RunClock} clock @param {Run | null} run null before the next run @param {Now | null} now @returns {Face} */
export function faceOf(clock, run, now) {
    if (!run || !now) return setUp(clock, null);
    switch (now.step) {
        case "Ready": return setUp(clock, run);
        case "CountingDown": return countdown(clock, run, now);
        case "Driving": case "Down": return driving(clock, run, now);
        case "Rolling": return rolling(clock, run, now);
        case "Halted": case "Shooting": return shooting(clock, run, now);
        default: return over(clock, run, now);
    }
}

/** @param {RunClock} clock @param {Run | null} run @returns {Face} */
function setUp(clock, run) {
    const draft = clock.draftOf(run);
    const option = clock.things.options.find((one) => one.id === draft.option);
    const pack = clock.things.packs.find((one) => one.id === draft.pack);
    const next = clock.nextOption();
    const cooling = run?.coolings.find((one) => one.end === null);
    return {
        step: "Ready", title: `${draft.kind === "test" ? "Run" : word(draft.kind)} ${draft.number}`, digits: minutes(draft.driveS),
        line: cooling ? `Cooling with ${word(cooling.way).replace("in the ", "")} for ${minutes((clock.now() - cooling.begin) / 1000)}.` : "Fit the option, put the car down, then start the countdown.",
        primary: { id: "countdown", label: `Go in ${clock.leadS} s`, detail: "then the horn ends hard driving", primary: true, act: (at) => clock.startCountdown(run, at) },
        secondary: [
            { id: "option", label: option ? option.name : "Which option?", detail: option ? (!run && option.id === next.option && next.by) || "cooling option" : "not chosen yet", look: option ?? null, act: () => askOption(clock, run) },
            { id: "go-now", label: "Go now", detail: "hold ½ s", firm: true, act: (at) => clock.goNow(run, at) },
            { id: "this-run", label: `Drive ${minutes(draft.driveS)}`, detail: ["change", draft.kind === "test" ? "" : word(draft.kind), pack?.name ?? ""].filter(Boolean).join("; "), act: () => askThisRun(clock, run) },
            cooling
                ? { id: "cooling-end", label: "Cooling ends", detail: word(cooling.way), act: (/** @type {number} */ at) => clock.endCooling(cooling, at) }
                : { id: "cooling", label: "Cooling begins", detail: "before this run", act: () => askCooling(clock, run) },
        ],
        next: (at) => clock.startCountdown(run, at),
    };
}

/** @param {RunClock} clock @param {Run} run @param {Now} now @returns {Face} */
function countdown(clock, run, now) {
    return {
        step: now.step, title: runTitle(run), digits: String(Math.ceil((now.leftS ?? 0) - 1e-6)), line: "Go comes by itself. Both hands are free.",
        primary: { id: "go", label: "Go now", detail: "hold ½ s", firm: true, primary: true, act: (at) => clock.go(run, at) },
        secondary: [{ id: "cancel-countdown", label: "Not yet", detail: "cancels the countdown", act: (at) => clock.cancelCountdown(run, at) }],
        next: null,
    };
}

/** @param {RunClock} clock @param {Run} run @param {Now} now @returns {Face} */
function driving(clock, run, now) {
    const elapsed = run.go ? (clock.now() - run.go.at) / 1000 : 0;
    const left = now.leftS;
    const down = now.step === "Down";
    const overdue = left !== null && left < 0;
    return {
        step: now.step, title: runTitle(run), digits: left === null ? minutes(elapsed) : overdue ? minutes(elapsed) : minutesLeft(left),
        line: down ? `Down for ${minutes(now.sinceS)}.` : left === null ? "Driving." : overdue ? `Driving; the planned end was ${minutes(-left)} ago.` : `Left of ${minutes(run.countdown?.driveS ?? 0)}; ${minutes(elapsed)} driven.`,
        primary: { id: "stop", label: "Stop", detail: "hard driving ends: hold ½ s", firm: true, primary: true, act: (at) => clock.stop(run, at) },
        secondary: [
            down ? { id: "up", label: "Up again", act: (at) => clock.mark(run, "run.up", at) } : { id: "down", label: "Down", detail: "on its roof, stuck", act: (at) => clock.mark(run, "run.down", at) },
            { id: "lap", label: "Lap", detail: run.laps.length > 0 ? `${run.laps.length} so far` : "", act: (at) => clock.mark(run, "run.lap", at) },
            run.fanDeadAt === null ? { id: "fan-dead", label: "Fan dead", act: (at) => clock.mark(run, "run.fan-dead", at) } : { id: "fan-dead-seen", label: "Fan is dead", detail: "noted", act: () => {} },
            { id: "abandon", label: "Give it up", detail: "say why", act: () => askAbandon(clock, run) },
        ],
        next: (at) => clock.stop(run, at),
    };
}

/** @param {RunClock} clock @param {Run} run @param {Now} now @returns {Face} */
function rolling(clock, run, now) {
    const by = run.stop?.counted.said.body.by;
    return {
        step: now.step, title: runTitle(run), digits: minutes(now.sinceS), caution: true,
        line: by === "horn" ? "The horn ended hard driving. Rolling in." : "Rolling in.",
        primary: { id: "halt", label: "Halted", detail: "it stands: hold ½ s", firm: true, primary: true, act: (at) => clock.halt(run, at, 0) },
        secondary: [
            { id: "shot", label: "Shot", detail: "before the halt is noted", act: (at) => clock.shoot(run, at) },
            { id: "no-stop", label: "It drives on", detail: "that was no stop", act: (at) => clock.takeBackStamp(run, "stop", at) },
        ],
        ago: haltedAgo(clock, run).filter((_, index) => now.sinceS >= agoS[index]),
        next: (at) => clock.halt(run, at, 0),
    };
}

/** @param {RunClock} clock @param {Run} run @returns {Action[]} */
function haltedAgo(clock, run) {
    return agoS.map((seconds) => ({ id: `halt-${seconds}`, label: `Halted ${seconds} s ago`, detail: "hold ½ s", firm: true, act: (at) => clock.halt(run, at, seconds) }));
}

/** @param {RunClock} clock @param {Run} run @param {Now} now @returns {Face} */
function shooting(clock, run, now) {
    const aim = clock.aim;
    const gun = clock.things.instruments.find((one) => one.id === aim.instrument);
    const wanted = now.shotsLeft > 0;
    const enough = !wanted || now.sinceS > longRestS;
    /** @type {Action} */
    const shot = { id: "shot", label: "Shot", detail: wanted ? `${now.shotsLeft} to go` : "one more", primary: true, act: (at) => clock.shoot(run, at) };
    return {
        step: now.step, title: runTitle(run), digits: now.sinceS < 0 ? "–" : minutes(now.sinceS), caution: true,
        line: shootingLine(run, now),
        primary: shot,
        secondary: [
            { id: "aim", label: `${gun?.name ?? "Gun"} on ${word(aim.spot)}`, detail: `${word(aim.hold)}; ${word(aim.surface)}`, act: () => askAim(clock) },
            { id: "shot-photo", label: "Shot, then photo", detail: "of the gun's display", act: (at) => clock.shootAndPhotograph(run, at) },
            ...(run.powerOff ? [] : [{ id: "power-off", label: "Power is off", act: (/** @type {number} */ at) => clock.mark(run, "run.power-off", at) }]),
            ...(run.halt || !run.stop ? [] : haltedAgo(clock, run)),
            ...(enough || run.shots.length > 0 ? [{ id: "next-run", label: "Next run", detail: now.numbersOwed > 0 ? "numbers can wait" : "", act: () => clock.nextRun() }] : []),
        ],
        next: wanted && now.step !== "Done" ? (at) => clock.shoot(run, at) : null,
    };
}

/** @param {Run} run @param {Now} now */
function shootingLine(run, now) {
    if (!run.halt) return "Since the end of hard driving: the halt is not noted.";
    if (now.sinceS > lateS) return "Late for further shots; the numbers can still be typed.";
    if (now.shotsLeft > 0) return run.shots.length === 0 ? "Touch Shot as you pull the trigger." : "Shoot first, type after.";
    return now.numbersOwed > 0 ? "All shot: type the numbers." : "Since the halt.";
}

/** @param {RunClock} clock @param {Run} run @param {Now} now @returns {Face} */
function over(clock, run, now) {
    const drive = run.go && (run.stop ?? run.halt) ? (/** @type {{ at: number }} */ (run.stop ?? run.halt).at - run.go.at) / 1000 : number(run.fields, "driveS");
    const gone = now.step === "Abandoned";
    return {
        step: now.step, title: runTitle(run), digits: drive !== null && drive !== undefined ? minutes(drive) : "–",
        line: gone ? `Given up${run.because ? `: ${run.because}` : ""}. The warmth that it left is kept.` : drive === null ? "This run is over." : "Driven hard. This run is over.",
        primary: { id: "next-run", label: "Next run", primary: true, act: () => clock.nextRun() },
        secondary: [
            ...(gone ? [{ id: "not-abandoned", label: "It goes on", detail: "it was not given up", act: (/** @type {number} */ at) => clock.takeBackAbandon(run, at) }] : []),
            ...(!gone && run.shots.length < 20 ? [{ id: "late-shot", label: "Late shot", detail: "one more reading", act: (/** @type {number} */ at) => clock.shoot(run, at) }] : []),
            ...(run.fields.pack && run.chargeMah === null ? [{ id: "charge", label: "Charge", detail: "mAh put back", act: () => askCharge(clock, run) }] : []),
        ],
        next: null,
    };
}

/** The line under the title: the option. @param {RunClock} clock @param {Run | null} run */
export function optionLine(clock, run) {
    const draft = run ? text(run.fields, "option") : clock.draftOf(null).option;
    return clock.things.options.find((one) => one.id === draft) ?? null;
}
