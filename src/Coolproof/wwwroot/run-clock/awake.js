// Keeps the screen on during a run and shakes the phone, where the browser lets it. On plain http there is no wake lock: the page says so, and loses nothing.

/** @type {WakeLockSentinel | null} */
let lock = null;
let wanted = false;
let asking = false;

/** Whether the screen can be kept on from here. */
export const canStayAwake = "wakeLock" in navigator;

/** @param {boolean} on */
export async function stayAwake(on) {
    wanted = on;
    if (!canStayAwake || asking) return;
    asking = true;
    try {
        if (wanted && document.visibilityState === "visible" && (!lock || lock.released)) lock = await navigator.wakeLock.request("screen");
        else if (!wanted && lock) {
            await lock.release();
            lock = null;
        }
    } catch {
        // Battery saving forbids it; the timestamps do without.
    } finally {
        asking = false;
    }
}

// The browser takes the lock away whenever the page is hidden.
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && wanted && void stayAwake(true));

/** @param {number | number[]} pattern ms */
export function shake(pattern) {
    try {
        navigator.vibrate?.(pattern);
    } catch {
        // Not on this device.
    }
}
