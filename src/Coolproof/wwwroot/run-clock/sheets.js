// Sheets that come up over the clock: a choice, a number by the thumb pad, a list. The clock behind goes on.
import { button, byId, el, say } from "./dom.js";
import { minutes } from "./words.js";

/** @typedef {import("./dom.js").Action} Action */
/** @typedef {{ id: string, label: string, detail?: string, firm?: boolean, look?: { colour: string, path: string } | null }} Choice */

const sheet = () => /** @type {HTMLDialogElement} */ (byId("sheet"));

/** @type {(() => void) | null} */
let closing = null;

/** Whether a sheet is up, and whether it is the thumb pad. */
export const sheetUp = () => (sheet().open ? (sheet().dataset.sheet ?? "") : null);

/**
 * Shows a sheet.
 * @param {string} kind
 * @param {string} title
 * @param {Node[]} content
 * @param {() => void} closed called once when it goes away
 */
function show(kind, title, content, closed) {
    closing?.();
    const dialog = sheet();
    dialog.dataset.sheet = kind;
    const heading = el("h2", { id: "sheet-title", tabindex: "-1" }, title);
    const back = button({ id: "sheet-back", label: "Back", act: () => hide() });
    dialog.replaceChildren(el("div", { class: "sheet-head" }, heading, back), ...content);
    closing = closed;
    dialog.onclose = () => {
        const done = closing;
        closing = null;
        done?.();
    };
    if (!dialog.open) dialog.showModal();
    heading.focus({ preventScroll: true });
    dialog.scrollTop = 0;
}

export function hide() {
    if (sheet().open) sheet().close();
}

/**
 * Lets a person choose.
 * @param {string} title
 * @param {Choice[]} choices
 * @param {string} note said above them
 * @returns {Promise<{ id: string, at: number } | null>} null when the sheet was left
 */
export function pick(title, choices, note = "") {
    return new Promise((resolve) => {
        /** @type {{ id: string, at: number } | null} */
        let chosen = null;
        const list = el("div", { class: "choices" }, ...choices.map((choice) => button({
            ...choice, id: `pick-${choice.id}`, act: (at) => {
                chosen = { id: choice.id, at };
                hide();
            },
        })));
        show("pick", title, [...(note ? [el("p", {}, note)] : []), list], () => resolve(chosen));
    });
}

/**
 * A sheet with whatever is given; resolved when it is left.
 * @param {string} title
 * @param {Node[]} content
 * @returns {Promise<void>}
 */
export const open = (title, content) => new Promise((resolve) => show("list", title, content, resolve));

/**
 * Lets a person type a number with the thumb.
 * @param {{ title: string, note?: string, unit: string, start?: string, negative?: boolean, minutes?: boolean, least: number, most: number, wrong?: string, extra?: Action[], save?: string }} asked
 *   `minutes`: minutes and two digits of seconds are typed, and all numbers are seconds; `wrong`: what is said of a number that is out of range
 * @returns {Promise<number | null>} null when the sheet was left
 */
export function typeNumber(asked) {
    return new Promise((resolve) => {
        let typed = asked.start ?? "";
        let fresh = typed !== "";
        /** @type {number | null} */
        let result = null;
        const shown = el("output", { class: "typed", "aria-live": "polite" });
        const refused = el("p", { class: "refused", role: "alert" });
        const said = () => (asked.minutes ? minutesTyped(typed) : typed.replace("-", "−"));
        const show_ = () => {
            say(shown, `${typed === "" ? "–" : said()} ${asked.unit}`);
            shown.classList.remove("wrong");
            say(refused, "");
        };
        const refuse = (/** @type {string} */ why) => {
            shown.classList.add("wrong");
            say(refused, why);
            shown.scrollIntoView({ block: "nearest" });
        };
        const put = (/** @type {string} */ key) => {
            if (key === "00") typed = typed.length > 2 || typed === "" ? typed : `${typed}00`;
            else if (key === "⌫") typed = fresh ? "" : typed.slice(0, -1);
            else if (key === "±") typed = typed.startsWith("-") ? typed.slice(1) : `-${typed}`;
            else if (key === ".") typed = fresh ? "0." : typed.includes(".") ? typed : `${typed === "" || typed === "-" ? `${typed}0` : typed}.`;
            else if (typed.replace(/[-.]/g, "").length < (asked.minutes ? 4 : 5) || fresh) typed = (fresh ? "" : typed) + key;
            fresh = false;
            show_();
        };
        const save = () => {
            const value = asked.minutes ? 60 * Number(typed.slice(0, -2)) + Number(typed.slice(-2)) : Number(typed);
            const range = (/** @type {number} */ limit) => (asked.minutes ? minutes(limit) : String(limit).replace("-", "−"));
            if (typed === "" || typed === "-" || !Number.isFinite(value)) refuse("Type the number first.");
            else if (asked.minutes && Number(typed.slice(-2)) > 59) refuse(`${said()} has more than 59 seconds.`);
            else if (value < asked.least || value > asked.most) refuse(`Not saved: ${said()} ${asked.unit} ${asked.wrong ?? "is out of range"}. From ${range(asked.least)} to ${range(asked.most)}.`);
            else {
                result = value;
                hide();
            }
        };
        const keys = ["1", "2", "3", "4", "5", "6", "7", "8", "9", asked.negative ? "±" : "⌫", "0", asked.minutes ? "00" : "."].map((key) => quick(key, () => put(key)));
        const content = [
            ...(asked.note ? [el("p", {}, asked.note)] : []), shown, refused,
            el("div", { class: "pad" }, ...keys, ...(asked.negative ? [quick("⌫", () => put("⌫"))] : [])),
            el("div", { class: "choices" }, button({ id: "pad-save", label: asked.save ?? "Save", primary: true, act: save }), ...(asked.extra ?? []).map(button)),
        ];
        show("pad", asked.title, content, () => {
            sheet().removeEventListener("keydown", byKey);
            resolve(result);
        });
        /** @param {KeyboardEvent} event */
        const byKey = (event) => {
            if (asked.minutes && /^[.,:]$/.test(event.key)) put("");
            else if (/^[0-9.]$/.test(event.key)) put(event.key);
            else if (event.key === ",") put(".");
            else if (event.key === "-" && asked.negative) put("±");
            else if (event.key === "Backspace") put("⌫");
            else if (event.key === "Enter" && !(document.activeElement instanceof HTMLButtonElement)) save();
            else return;
            event.preventDefault();
        };
        sheet().addEventListener("keydown", byKey);
        show_();
    });
}

/** Digits as minutes and seconds: 530 is 5:30. @param {string} digits */
const minutesTyped = (digits) => `${digits.slice(0, -2) || "0"}:${digits.slice(-2).padStart(2, "0")}`;

/** A key of the pad: it may be pressed twice in a row, as in 66. @param {string} key @param {() => void} act */
function quick(key, act) {
    const made = el("button", { type: "button", class: "key", "aria-label": key === "⌫" ? "take the last digit away" : key === "±" ? "below zero" : null }, key);
    made.addEventListener("click", act);
    return made;
}
