// How the clock says things.
import { number, text } from "./entries.js";

/** Minutes and seconds, such as 6:05. @param {number} seconds */
export function minutes(seconds) {
    const whole = Math.max(0, Math.floor(seconds + 1e-6));
    return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** Time left, rounded up so that it reads 0:00 only when it is over. @param {number} seconds */
export const minutesLeft = (seconds) => minutes(Math.max(0, Math.ceil(seconds - 1e-6)));

/** Local time of day with seconds. @param {number} ms */
export const timeOfDay = (ms) => new Date(ms).toLocaleTimeString("en-GB", { hour12: false });

/** @param {string} unit */
export const degrees = (unit) => (unit === "f" ? "°F" : "°C");

/** A temperature in the unit of the reader. @param {number} celsius @param {string} unit */
export const temperature = (celsius, unit) => `${(unit === "f" ? (celsius * 9) / 5 + 32 : celsius).toFixed(1)} ${degrees(unit)}`;

/** @type {Record<string, string>} */
const plain = {
    test: "Test run", "warm-up": "Warm-up", race: "Race", void: "Void", can: "can", fin: "fin", endbell: "endbell", "through-vent": "through the vent", winding: "winding", esc: "speed controller",
    single: "single shot", max: "max held", average: "average", tape: "tape", paint: "paint", bare: "bare metal", unknown: "not known", shade: "in the shade", "own-fan": "its own fan", "pit-fan": "a pit fan",
    "cooled-air": "cooled air", driver: "Driver", clock: "Clock", gun: "Gun", any: "Everything", crash: "crash", pack: "pack empty", rain: "rain", controller: "speed controller", other: "something else",
    sun: "sun", cloud: "cloud", dusk: "dusk", indoor: "indoors", calm: "calm", light: "light wind", strong: "strong wind", dry: "dry", damp: "damp", wet: "wet", thermometer: "thermometer", forecast: "forecast",
    "run.go": "Go", "run.stop": "End of hard driving", "run.halt": "Halt", "run.power-off": "Power off", "run.lap": "Lap", "run.down": "Down", "run.up": "Up again", "run.fan-dead": "Fan dead", "run.abandon": "Given up",
};

/** A word of the entries in plain words. @param {string | null | undefined} word */
export const word = (word) => (word ? (plain[word] ?? word) : "");

/** What a run is called. @param {import("./runs.js").Run} run */
export function runTitle(run) {
    const kind = text(run.fields, "kind") ?? "test";
    const name = number(run.fields, "number") ?? text(run.fields, "name") ?? "";
    return `${kind === "test" ? "Run" : kind === "void" ? "Void run" : word(kind)} ${name}`.trim();
}

/** @param {number} count @param {string} one @param {string} many */
export const counted = (count, one, many) => `${count} ${count === 1 ? one : many}`;
