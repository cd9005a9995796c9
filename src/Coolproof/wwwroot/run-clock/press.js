// How a press counts. Rain, a sleeve and a wet finger also touch; docs/run-clock.md ("Presses") says why it is done so:
// - a plain button counts when the same single finger comes down and goes up on it, without wandering;
// - what starts, stops or halts a run wants a firm press: the one finger rests half a second and lets go within four. The stamp is the instant it came down;
// - a second finger anywhere, a drag, a swipe from the edge, or the second tap of two does nothing;
// - a button that has just appeared is deaf for a moment, so that no tap meant for the one before it can hit it;
// - a mouse or a key is no rain drop: one click or one keystroke counts.

export const firmMs = 500;
const restMs = 4_000;
const wanderPx = 24;
const newMs = 700;
const againMs = 600;
const keyAgainMs = 1_000;
const nextKeys = new Set([" ", "Enter", "PageDown", "ArrowRight", "MediaPlayPause", "MediaTrackNext"]);

/** @typedef {{ button: HTMLElement, pointer: number, x: number, y: number, at: number, down: number, firm: boolean, full: ReturnType<typeof setTimeout> | undefined }} Press */

/** When each button appeared, by performance.now(). @type {WeakMap<HTMLElement, number>} */
const born = new WeakMap();
/** @type {WeakMap<HTMLElement, (at: number) => void>} */
const acts = new WeakMap();
/** @type {Map<string, number>} */
const lastActed = new Map();
/** @type {Set<number>} */
const fingers = new Set();
/** @type {Press | null} */
let press = null;
/** The key that was taken for the next step and is still down. */
let taken = "";
/** What the last finger or mouse came down on. @type {Element | null} */
let touched = null;
/** @type {(button: HTMLElement) => void} */
let tooShort = () => {};

/**
 * Makes a button do something.
 * @param {HTMLElement} button
 * @param {(at: number) => void} act takes the instant of the press by this device's clock, ms since 1970
 */
export function onPress(button, act) {
    if (!acts.has(button)) appeared(button);
    acts.set(button, act);
}

/** A button means something new from now on. @param {HTMLElement} button */
export function appeared(button) {
    born.set(button, performance.now());
}

/** The wall clock at an event. @param {Event} event */
const instantOf = (event) => Date.now() - Math.max(0, performance.now() - event.timeStamp);

/** @param {HTMLElement} button @param {number} at @param {number} steady when the finger did it, by performance.now(); a busy page hears of it later @param {number} again ms */
function act(button, at, steady, again = againMs) {
    const name = button.dataset.act ?? "";
    if (steady - (born.get(button) ?? 0) < newMs || steady - (lastActed.get(name) ?? -Infinity) < again) return;
    if (/** @type {HTMLButtonElement} */ (button).disabled || button.getAttribute("aria-disabled") === "true") return;
    lastActed.set(name, steady);
    acts.get(button)?.(at);
}

/** @param {Event} event @returns {HTMLElement | null} */
function buttonAt(event) {
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    return button instanceof HTMLElement && acts.has(button) ? button : null;
}

function forget() {
    if (!press) return;
    clearTimeout(press.full);
    press.button.classList.remove("pressed", "firmly");
    press = null;
}

/**
 * Listens on the whole page.
 * @param {{ next: (at: number) => void, tooShort: (button: HTMLElement) => void, firm: () => void }} to the next step by key; a firm button pressed too shortly; a firm press that has rested long enough
 */
export function listen(to) {
    tooShort = to.tooShort;
    window.addEventListener("pointerdown", (event) => down(event, to.firm), { capture: true });
    window.addEventListener("pointermove", (event) => {
        if (press?.pointer === event.pointerId && Math.hypot(event.clientX - press.x, event.clientY - press.y) > wanderPx) forget();
    }, { capture: true });
    window.addEventListener("pointerup", up, { capture: true });
    window.addEventListener("pointercancel", (event) => {
        fingers.delete(event.pointerId);
        forget();
    }, { capture: true });
    document.addEventListener("visibilitychange", () => {
        fingers.clear();
        forget();
    });
    // A wet or resting finger brings no menu up over the clock; where text is typed, the menu pastes.
    window.addEventListener("contextmenu", (event) => {
        if (!(event.target instanceof Element && event.target.closest("input, textarea"))) event.preventDefault();
    });
    // A click without a finger or mouse comes from a key or from a screen reader.
    window.addEventListener("click", (event) => {
        // The click after a touch lands on whatever is there by now: on a sheet that the touch has opened, it would press a key.
        if (event.detail > 0 && event.target instanceof Node && !touched?.contains(event.target)) {
            event.preventDefault();
            event.stopPropagation();
            return;
        }
        const button = buttonAt(event);
        if (button && event.detail === 0) act(button, instantOf(event), event.timeStamp);
    }, { capture: true });
    window.addEventListener("keydown", (event) => key(event, to.next), { capture: true });
    // A button that has the focus would be clicked by the same Space once more, when the key comes up.
    window.addEventListener("keyup", (event) => {
        if (event.key === taken) event.preventDefault();
        taken = "";
    }, { capture: true });
}

/** @param {PointerEvent} event @param {() => void} rested */
function down(event, rested) {
    touched = event.target instanceof Element ? (event.target.closest("button, a, label") ?? event.target) : null;
    if (event.pointerType === "mouse") {
        const button = event.button === 0 ? buttonAt(event) : null;
        forget();
        if (button) press = { button, pointer: event.pointerId, x: event.clientX, y: event.clientY, at: instantOf(event), down: event.timeStamp, firm: false, full: undefined };
        return;
    }
    fingers.add(event.pointerId);
    forget();
    if (fingers.size > 1) return; // two fingers, or a hand full of rain
    const button = buttonAt(event);
    if (!button || event.timeStamp - (born.get(button) ?? 0) < newMs) return;
    const firm = button.hasAttribute("data-firm");
    press = { button, pointer: event.pointerId, x: event.clientX, y: event.clientY, at: instantOf(event), down: event.timeStamp, firm, full: undefined };
    button.classList.add("pressed");
    if (firm) {
        press.full = setTimeout(() => {
            button.classList.add("firmly");
            rested();
        }, firmMs);
    }
}

/** @param {PointerEvent} event */
function up(event) {
    fingers.delete(event.pointerId);
    const ended = press;
    if (!ended || ended.pointer !== event.pointerId) return;
    forget();
    const held = event.timeStamp - ended.down;
    const off = Math.hypot(event.clientX - ended.x, event.clientY - ended.y) > wanderPx;
    if (off || held > restMs) return;
    if (ended.firm && held < firmMs) tooShort(ended.button);
    else act(ended.button, ended.at, event.timeStamp);
}

/** Any Bluetooth key or foot switch: Space, Enter and what remotes send. @param {KeyboardEvent} event @param {(at: number) => void} next */
function key(event, next) {
    if (!nextKeys.has(event.key) || event.altKey || event.ctrlKey || event.metaKey) return;
    const focused = document.activeElement;
    if (focused instanceof HTMLElement && focused !== document.body && !focused.hasAttribute("data-primary")) {
        // Whoever walks the page by keyboard presses what has the focus.
        if (focused.matches("input, select, textarea, summary, a, :focus-visible") || focused.closest("dialog")) {
            if (event.repeat && acts.has(focused)) event.preventDefault();
            return;
        }
    }
    event.preventDefault();
    taken = event.key;
    if (event.repeat || event.timeStamp - (lastActed.get("key") ?? -Infinity) < keyAgainMs) return;
    lastActed.set("key", event.timeStamp);
    next(instantOf(event));
}
