// A form of sliders with data-answer: while a slider moves, the answer follows from few draws; once it rests, from all of them. The address follows too, so that it can be sent as a link.
// The form "NAME-form" has its answer in the sections "NAME-…"; "NAME-said" tells it to who can't see it.

const rest = 300; // ms without a move
let timer = 0;
/** @type {{ stop: AbortController, quick: boolean } | null} */
let asking = null;
let moved = false;

/** @param {HTMLFormElement} form */
const query = form => new URLSearchParams(/** @type {any} */ (new FormData(form))).toString();

/** @param {HTMLFormElement} form */
const nameOf = form => form.id.slice(0, -'-form'.length);

/** @param {string} name @param {string} text */
function put(name, text) {
    const parts = new DOMParser().parseFromString(text, 'text/html');
    for (const part of document.querySelectorAll(`section[id^="${name}-"]`)) {
        const newer = parts.getElementById(part.id);
        part.toggleAttribute('data-stale', newer === null);
        if (newer === null) continue;
        const open = [...part.querySelectorAll('details')].map(one => one.open);
        part.replaceChildren(...newer.childNodes);
        [...part.querySelectorAll('details')].forEach((one, place) => { one.open = open[place] ?? one.open; });
    }
}

/** @param {HTMLFormElement} form @param {boolean} quick */
async function ask(form, quick) {
    // One quick answer at a time: what moved meanwhile is asked once it is there. A whole one gives way to it.
    if (quick && asking?.quick) {
        moved = true;
        return;
    }
    asking?.stop.abort();
    const mine = asking = { stop: new AbortController(), quick };
    moved = false;
    const asked = query(form);
    try {
        const answer = await fetch(`${form.dataset['answer']}?${asked}${quick ? '&quick=true' : ''}`, { signal: mine.stop.signal });
        if (answer.status === 204) location.assign(`${form.getAttribute('action')}?${asked}`);
        else if (answer.ok) {
            put(nameOf(form), await answer.text());
            form.dataset['answered'] = `${quick ? 'quick' : 'whole'} ${asked}`;
            if (!quick) {
                history.replaceState(history.state, '', `${form.getAttribute('action')}?${asked}`);
                const said = document.getElementById(`${nameOf(form)}-said`);
                if (said) said.textContent = document.querySelector(`#${nameOf(form)}-head h1`)?.textContent ?? '';
            }
        }
    } catch {
        // Outdated, or the server is away: the next move asks again, and the button does without this.
    }
    if (asking !== mine) return;
    asking = null;
    if (moved) ask(form, true);
}

// A quick answer that is on its way is shown before the whole one is asked for.
/** @param {HTMLFormElement} form */
function settle(form) {
    if (asking?.quick) timer = window.setTimeout(() => settle(form), rest / 3);
    else ask(form, false);
}

document.addEventListener('input', event => {
    const field = /** @type {HTMLInputElement} */ (event.target);
    const form = field.closest('form');
    if (!form?.dataset['answer']) return;
    if (field.type === 'range') {
        const words = field.value + (field.dataset['unit'] ? ` ${field.dataset['unit']}` : '');
        field.setAttribute('aria-valuetext', words);
        const output = field.parentElement?.querySelector('output');
        if (output) output.textContent = words;
    }
    ask(form, true);
    clearTimeout(timer);
    timer = window.setTimeout(() => settle(form), rest);
});
