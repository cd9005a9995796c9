// A guided rehearsal: the motor is made up, and the clock of this page runs faster while there is nothing to do but drive or cool. Stamps are of that clock.
// Which day is one, and from when, the bench says; nothing of it touches the clock of other days.

const fastest = 60;
const nearS = 0.4;
const countdownSpeed = 4;

/** @type {{ key: string, steady: number, at: number, speed: number } | null} */
let running = null;

/** Whether this page's clock is made up. */
export const simulated = () => running !== null;

/** How many seconds of it go by in one. */
export const speedNow = () => running?.speed ?? 1;

const now = () => {
    const clock = /** @type {NonNullable<typeof running>} */ (running);
    return clock.at + (performance.now() - clock.steady) * clock.speed;
};

/**
 * Begins: from now on `Date.now` is the made-up clock. It stands still while no page of the day is open, and goes on from where it was.
 * @param {string} day
 * @param {number} fromMs where it begins
 */
export function simulate(day, fromMs) {
    if (running) return;
    const key = `coolproof-rehearsal ${day}`;
    const kept = Number(localStorage.getItem(key));
    running = { key, steady: performance.now(), at: kept > fromMs ? kept : fromMs, speed: 1 };
    Date.now = now;
    setInterval(keep, 1_000);
    addEventListener("pagehide", keep);
}

function keep() {
    if (running) localStorage.setItem(running.key, String(Math.round(now())));
}

/**
 * Sets the speed that fits what is going on: fast while driving and cooling, slower and slower towards the horn, as in life for everything that a hand does.
 * @param {import("./step.js").Now | null} step
 * @param {boolean} cooling whether a cool-down is on
 */
export function pace(step, cooling) {
    if (!running) return;
    const driving = step?.step === "Driving" || step?.step === "Down";
    const wanted = step?.step === "CountingDown" ? countdownSpeed
        : driving ? Math.max(1, Math.min(fastest, (step?.leftS ?? 0) / nearS))
        : (!step || step.step === "Ready") && cooling ? fastest : 1;
    if (wanted === running.speed) return;
    running.at = now();
    running.steady = performance.now();
    running.speed = wanted;
}
