// What is next: a pure function of entries and the clock, the mirror of RunNow in Coolproof.Notebook.Journal. Both are tested on the cases of
// tests/Coolproof.EndToEnd/Data/steps.json, and on invented days.
import { number, text } from "./entries.js";

/** @typedef {import("./runs.js").Run} Run */
/** @typedef {import("./runs.js").Day} Day */
/** @typedef {"Ready" | "CountingDown" | "Driving" | "Down" | "Rolling" | "Halted" | "Shooting" | "Done" | "Abandoned"} Step */
/** Where a run is. Seconds in this step (-1 for none), seconds left of countdown or drive, shots still wanted, numbers owed. @typedef {{ step: Step, sinceS: number, leftS: number | null, shotsLeft: number, numbersOwed: number }} Now */

/** After this long a halted motor's readings say little more, s (common practice, no source; as on the bench). */
export const shootingS = 180;

/** Air older than this is asked for again, ms (common practice, no source; as on the bench). */
export const airHoldsMs = 30 * 60_000;

/** Whether a shot's number is still to be typed. @param {import("./runs.js").Shot} shot */
export const owesNumber = (shot) => shot.readC === null && number(shot.fields, "windingHotMohm") === null;

/**
 * Where a run is.
 * @param {Run} run
 * @param {number} nowMs the server's clock, ms since 1970
 * @param {number} shotsWanted shots wanted after a run
 * @returns {Now}
 */
export function runNow(run, nowMs, shotsWanted = 3) {
    const numbersOwed = run.shots.filter(owesNumber).length;
    const shotsLeft = Math.max(0, shotsWanted - run.shots.length);
    /** @param {Step} step @param {number | null} since @param {number | null} leftS @returns {Now} */
    const at = (step, since, leftS = null) => ({ step, sinceS: since === null ? -1 : (nowMs - since) / 1000, leftS, shotsLeft, numbersOwed });
    /** @param {number} halt @returns {Step} */
    const shot = (halt) => {
        const late = (nowMs - halt) / 1000 > shootingS;
        if (run.shots.length === 0) return late ? "Done" : "Halted";
        return numbersOwed > 0 || (shotsLeft > 0 && !late) ? "Shooting" : "Done";
    };
    if (run.abandonedAt !== null) return at("Abandoned", run.abandonedAt);
    if (run.halt) return at(shot(run.halt.at), run.halt.at);
    // Shots of a run that nobody stamped were typed afterwards: there is nothing left to stamp.
    if (!run.stop && !run.go && run.shots.length > 0) return at(numbersOwed > 0 ? "Shooting" : "Done", null);
    if (run.stop) return run.shots.length > 0 ? at(shot(run.stop.at), run.stop.at) : at("Rolling", run.stop.at);
    if (!run.go) return at("Ready", run.since);
    if (nowMs < run.go.at) return at("CountingDown", run.countdown?.at ?? null, (run.go.at - nowMs) / 1000);
    const driveLeft = run.countdown ? run.countdown.driveS - (nowMs - run.go.at) / 1000 : null;
    const still = run.stills.at(-1);
    return still && still.up === null ? at("Down", still.down, driveLeft) : at("Driving", run.go.at, driveLeft);
}

/** The number that the next run of a day takes. @param {Day} day */
export const nextNumber = (day) => Math.max(0, ...day.runs.map((run) => number(run.fields, "number") ?? 0)) + 1;

/** The run that the clock is at: the last one that is under way, else the last one; null on a day without runs. One that only waits for shots or numbers holds the next one up no more. @param {Day} day @param {number} nowMs @param {number} shotsWanted @returns {Run | null} */
export function currentRun(day, nowMs, shotsWanted) {
    const underWay = day.runs.filter((run) => !["Shooting", "Done", "Abandoned"].includes(runNow(run, nowMs, shotsWanted).step));
    return underWay.at(-1) ?? day.runs.at(-1) ?? null;
}

/** The option that the plan has next: of each option as many runs are over or running as the plan holds before it. @param {Day} day @param {string[]} plan @returns {string | null} */
export function plannedOption(day, plan) {
    /** @type {Map<string, number>} */
    const driven = new Map();
    for (const run of day.runs) {
        const option = text(run.fields, "option");
        if (option && (run.fields.kind ?? "test") === "test" && run.abandonedAt === null) driven.set(option, (driven.get(option) ?? 0) + 1);
    }
    for (const option of plan) {
        const left = driven.get(option) ?? 0;
        if (left === 0) return option;
        driven.set(option, left - 1);
    }
    return null;
}

/** Whether the air is to be asked for: none noted, or half an hour ago. @param {Day} day @param {number} nowMs */
export function airAsked(day, nowMs) {
    const latest = day.weather.filter((weather) => typeof weather.body.airC === "number").at(-1);
    return !latest || nowMs - latest.at > airHoldsMs;
}
