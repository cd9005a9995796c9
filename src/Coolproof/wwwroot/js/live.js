// Pages that show the notebook follow it: what carries data-live is fetched again when the server says that something changed.
// <section data-live> follows entries, <section data-live="verdict:UUID"> a verdict, "rounds:KEY" the simulated days of a plan; "sensors" which sensors there are and how their sources do; several words follow each of them. Each needs an id, so that its newer self is found.
// Nothing is refreshed while someone types in it.

const settle = 150; // several taps come within a moment, ms
/** @type {Set<string>} */
const due = new Set();
let timer = 0;

/** @param {Element} element */
const busy = element => element.contains(document.activeElement) && document.activeElement?.matches('input, select, textarea');

/** @param {string} word @param {Element} element */
const follows = (word, element) => {
    const said = element.getAttribute('data-live') ?? '';
    return said === '' ? word === 'entries' : said.split(' ').includes(word);
};

async function refresh() {
    timer = 0;
    const stale = [...document.querySelectorAll('[data-live]')].filter(element => [...due].some(word => follows(word, element)));
    due.clear();
    if (stale.length === 0) return;
    try {
        const answer = await fetch(location.href, { headers: { Accept: 'text/html' } });
        if (!answer.ok) return;
        const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
        for (const element of stale) {
            const newer = element.id ? page.getElementById(element.id) : null;
            if (!newer || busy(element) || newer.innerHTML === element.innerHTML) continue;
            const open = new Set([...element.querySelectorAll('details[open]')].map(one => one.id).filter(Boolean));
            element.replaceChildren(...newer.childNodes);
            for (const id of open) document.getElementById(id)?.setAttribute('open', '');
            element.dispatchEvent(new CustomEvent('coolproof:refreshed', { bubbles: true }));
        }
    } catch {
        // The server is away; the listener below tells when it is back.
    }
}

/** @param {string} word */
function later(word) {
    due.add(word);
    if (timer === 0) timer = window.setTimeout(refresh, settle);
}

/** @type {EventSource | null} */
let events = null;

function listen() {
    if (!document.querySelector('[data-live]')) return;
    // Values of sensors are sent only to pages that show them.
    const from = document.querySelector('[data-live~="sensors"]') ? '/api/live?sensors' : '/api/live';
    if (events?.url.endsWith(from)) return;
    events?.close();
    events = new EventSource(from);
    events.addEventListener('entries', event => {
        // The first one only says how far the server is: a page made with all of that is fresh.
        const shown = document.documentElement;
        const now = String(JSON.parse(event.data).cursor);
        if (shown.getAttribute('data-cursor') !== now) later('entries');
        shown.setAttribute('data-cursor', now);
    });
    events.addEventListener('verdict', event => later(`verdict:${JSON.parse(event.data).about}`));
    events.addEventListener('rounds', event => later(`rounds:${JSON.parse(event.data).about}`));
    events.addEventListener('sensors', event => {
        const told = JSON.parse(event.data);
        const shown = document.querySelector('[data-shape]');
        if (shown && shown.getAttribute('data-shape') !== told.shape) later('sensors');
        document.dispatchEvent(new CustomEvent('coolproof:sensors', { detail: told }));
    });
    events.onopen = () => document.documentElement.removeAttribute('data-away');
    events.onerror = () => document.documentElement.setAttribute('data-away', '');
}

listen();
// Enhanced navigation puts other content into the same document.
document.addEventListener('enhancedload', listen);
// @ts-ignore Blazor is there once its script has run.
window.Blazor?.addEventListener?.('enhancedload', listen);
addEventListener('pagehide', () => {
    events?.close();
    events = null;
});
addEventListener('pageshow', listen);
