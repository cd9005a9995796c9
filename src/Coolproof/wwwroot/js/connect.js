// Tests on the page "Connect a phone" what this very device can do, and says plainly what it can't and the way round it.

/** @param {string} work @param {boolean} works @param {string} says */
function say(work, works, says) {
    const row = document.querySelector(`[data-work="${work}"]`);
    const place = row?.querySelector('[data-says]') ?? row;
    if (!row || !place) return;
    row.setAttribute('data-works', works ? 'yes' : 'no');
    place.textContent = (works ? 'Works. ' : 'Does not work here. ') + says;
}

/** @param {string} work @param {() => void | Promise<void>} action */
function offer(work, action) {
    const button = document.querySelector(`[data-work="${work}"] [data-try]`);
    if (!(button instanceof HTMLButtonElement)) return;
    button.hidden = false;
    button.addEventListener('click', () => void action());
}

async function wake() {
    if (!('wakeLock' in navigator)) {
        say('wake', false, window.isSecureContext
            ? 'Set the screen to stay on for ten minutes in the phone’s settings.'
            : 'It takes an encrypted connection. Or set the screen to stay on for ten minutes in the phone’s settings.');
        return;
    }
    try {
        const lock = await navigator.wakeLock.request('screen');
        await lock.release();
        say('wake', true, 'The run clock keeps the screen on.');
    } catch {
        say('wake', false, 'The phone refuses it, perhaps to save power. Switch that off, or set the screen to stay on for ten minutes.');
    }
}

function sound() {
    offer('sound', () => {
        try {
            const audio = new AudioContext();
            const tone = audio.createOscillator();
            const loud = audio.createGain();
            tone.type = 'square';
            tone.frequency.value = 880;
            loud.gain.value = 0.4;
            tone.connect(loud).connect(audio.destination);
            tone.start();
            tone.stop(audio.currentTime + 0.6);
            say('sound', true, 'If you heard nothing: turn up the volume for media, and switch off silent mode.');
        } catch {
            say('sound', false, 'Watch the screen: it flashes with the horn.');
        }
    });
}

function buzz() {
    if (typeof navigator.vibrate !== 'function') {
        say('buzz', false, 'This browser can’t. The horn and the screen tell the same.');
        return;
    }
    offer('buzz', () => {
        if (navigator.vibrate([200, 100, 200])) say('buzz', true, 'If you felt nothing: switch on vibration in the phone’s settings.');
        else say('buzz', false, 'The phone refuses it. The horn and the screen tell the same.');
    });
}

function keep() {
    const request = indexedDB.open('coolproof-test', 1);
    request.onupgradeneeded = () => request.result.createObjectStore('test');
    request.onerror = () => say('keep', false, 'Leave the private window, or make room on the phone.');
    request.onsuccess = () => {
        const write = request.result.transaction('test', 'readwrite', { durability: 'strict' });
        write.objectStore('test').put(Date.now(), 'now');
        write.oncomplete = () => {
            request.result.close();
            indexedDB.deleteDatabase('coolproof-test');
            say('keep', true, 'They stay until the laptop has them.');
        };
        write.onerror = () => say('keep', false, 'Make room on the phone.');
    };
}

function offline() {
    if (window.isSecureContext && 'serviceWorker' in navigator) say('offline', true, 'Open the run clock once while the laptop is there.');
    else say('offline', false, window.isSecureContext
        ? 'This browser can’t, perhaps in a private window. Leave the run clock’s page open: it goes on without the laptop.'
        : 'It takes an encrypted connection. Leave the run clock’s page open: it goes on without the laptop.');
}

function all() {
    if (!document.querySelector('[data-works]')) return;
    void wake();
    sound();
    buzz();
    keep();
    offline();
}

all();
