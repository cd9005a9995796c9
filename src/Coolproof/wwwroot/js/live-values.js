// Live values of sensors: puts what live.js hears into the places that the server has drawn: <li data-channel="KEY"> with [data-value], [data-age], [data-matter], [data-span], [data-breaks] and the two paths.
// Ages grow here between what is heard, so that a server that is gone is seen to be.

/** @typedef {{ key: string, state: string, value: string, age: number, matter: string, span: string, breaks: string, line: string, gaps: string, count: number }} Channel */
/** @typedef {{ shape: string, channels: Channel[], sources: { name: string, lines: number }[] }} Told */

/** @type {Told | null} */
let told = null;
let heard = 0; // by the browser's steady clock, ms

/** @param {number} seconds The same words as SensorWords.Age. */
const age = seconds => seconds < 1.5 ? 'now' : seconds < 120 ? `${seconds.toFixed(0)} s ago` : seconds < 5400 ? `${(seconds / 60).toFixed(0)} min ago` : `${(seconds / 3600).toFixed(0)} h ago`;

/** @param {Element | null} place @param {string} text */
function put(place, text) {
    if (place && place.textContent !== text) place.textContent = text;
}

/** @param {Element | null} path @param {string} d */
function draw(path, d) {
    if (path && path.getAttribute('d') !== d) path.setAttribute('d', d);
}

function show() {
    if (!told) return;
    const since = (performance.now() - heard) / 1000;
    for (const channel of told.channels) {
        for (const place of document.querySelectorAll(`[data-channel="${channel.key}"]`)) {
            if (place.getAttribute('data-state') !== channel.state) place.setAttribute('data-state', channel.state);
            put(place.querySelector('[data-value]'), channel.value);
            put(place.querySelector('[data-age]'), channel.value === '–' ? '' : age(channel.age + since));
            put(place.querySelector('[data-matter]'), channel.matter);
            put(place.querySelector('[data-span]'), channel.span);
            put(place.querySelector('[data-breaks]'), channel.breaks);
            draw(place.querySelector('.moving .gap'), channel.gaps);
            draw(place.querySelector('.moving .trace'), channel.line);
        }
    }
    for (const source of told.sources) put(document.querySelector(`[data-lines="${CSS.escape(source.name)}"]`), String(source.lines));
}

document.addEventListener('coolproof:sensors', event => {
    told = /** @type {CustomEvent<Told>} */ (event).detail;
    heard = performance.now();
    show();
});
// A part of the page that was fetched anew is a moment old.
document.addEventListener('coolproof:refreshed', show);
setInterval(show, 1000);
