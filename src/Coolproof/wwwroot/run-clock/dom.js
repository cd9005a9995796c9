// Pieces of the page. Texts from entries only ever become text.
import { appeared, onPress } from "./press.js";

/** A choice or action on the page: `firm` ones want a firm press, `accent` ones wait for an answer. @typedef {{ id: string, label: string, detail?: string, firm?: boolean, primary?: boolean, accent?: boolean, look?: { colour: string, path: string } | null, pressed?: boolean, act: (at: number) => void }} Action */

/**
 * @param {string} tag
 * @param {Record<string, string | boolean | null | undefined>} attributes
 * @param {(Node | string | null)[]} children
 */
export function el(tag, attributes = {}, ...children) {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
        if (value === true) element.setAttribute(name, "");
        else if (typeof value === "string") element.setAttribute(name, value);
    }
    element.append(...children.filter((child) => child !== null));
    return element;
}

/** An element of the page by its id. @param {string} id */
export function byId(id) {
    const element = document.getElementById(id);
    if (!element) throw new Error(`the page has no ${id}`);
    return element;
}

/** Changes a text only where it differs, so that a finger on it is not disturbed. @param {Element} element @param {string} text */
export function say(element, text) {
    if (element.textContent !== text) element.textContent = text;
}

/** @param {Action} action */
export function button(action) {
    const made = el("button", { type: "button", "data-act": action.id });
    dress(made, action);
    return made;
}

/** @param {HTMLElement} element @param {Action} action */
function dress(element, action) {
    element.toggleAttribute("data-firm", action.firm === true);
    element.toggleAttribute("data-primary", action.primary === true);
    element.toggleAttribute("data-accent", action.accent === true);
    if (action.pressed === undefined) element.removeAttribute("aria-pressed");
    else element.setAttribute("aria-pressed", String(action.pressed));
    const key = `${action.label}|${action.detail ?? ""}|${action.look?.colour ?? ""}|${action.look?.path ?? ""}`;
    if (element.dataset.says !== key) {
        element.dataset.says = key;
        element.replaceChildren(...(action.look ? [mark(action.look)] : []), el("span", { class: "label" }, action.label), ...(action.detail ? [el("span", { class: "detail" }, action.detail)] : []));
    }
    onPress(element, action.act);
}

/**
 * Shows actions in a place; a button that stays is not made anew.
 * @param {HTMLElement} place
 * @param {Action[]} actions
 */
export function showActions(place, actions) {
    const there = new Map([...place.children].filter((child) => child instanceof HTMLElement).map((child) => [/** @type {HTMLElement} */ (child).dataset.act, /** @type {HTMLElement} */ (child)]));
    const wanted = actions.map((action) => {
        const known = there.get(action.id);
        if (known) dress(known, action);
        return known ?? button(action);
    });
    const same = wanted.length === place.children.length && wanted.every((one, index) => place.children[index] === one);
    if (same) return;
    // What moves to another place is new there.
    wanted.forEach((one, index) => place.children[index] !== one && appeared(one));
    place.replaceChildren(...wanted);
}

/** The one mark of an option, drawn as on every page. @param {{ colour: string, path: string }} look */
export function mark(look) {
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    svg.setAttribute("viewBox", "-10 -10 20 20");
    svg.setAttribute("class", "mark");
    svg.setAttribute("aria-hidden", "true");
    const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
    path.setAttribute("d", look.path);
    path.setAttribute("fill", look.colour === "#000000" ? "currentColor" : look.colour); // black is the colour of ink
    svg.append(path);
    return svg;
}
