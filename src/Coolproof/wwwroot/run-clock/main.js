// Starts the run clock and shows it. Nothing counts ticks: what is shown follows from stamps and the clock, however long the page slept.
import { asksOf } from "./asks.js";
import { shake } from "./awake.js";
import { RunClock } from "./clock.js";
import { byId, el, mark, say, showActions } from "./dom.js";
import { faceOf, optionLine } from "./face.js";
import { Journal } from "./journal.js";
import { more, outbox } from "./more.js";
import { listen, onPress } from "./press.js";
import { shotLine, typeReading } from "./questions.js";
import { simulated, speedNow } from "./rehearsal.js";
import { hide, sheetUp } from "./sheets.js";
import { counted, temperature } from "./words.js";

const tickMs = 200;
const lastShownMs = 10_000;
const burnsC = 65; // bare metal burns skin within a second from about here (ISO 13732-1; value from memory)

/** The look that was chosen on this device, from its cookie: a page that comes out of the store of the service worker is older. */
function look() {
    const cookie = document.cookie.split("; ").find((pair) => pair.startsWith("coolproof-look="))?.slice("coolproof-look=".length) ?? "";
    const chosen = new URLSearchParams(decodeURIComponent(cookie));
    const theme = chosen.get("theme");
    if (theme === "light" || theme === "dark" || theme === "sun") document.documentElement.dataset.theme = theme;
    if (chosen.get("hand")) document.documentElement.dataset.hand = chosen.get("hand") === "left" ? "left" : "right";
    return chosen.get("units") === "f" ? "f" : "c";
}

/** @param {RunClock} clock */
function show(clock) {
    const run = clock.run();
    const now = clock.nowOf(run);
    const face = faceOf(clock, run, now);
    document.body.dataset.step = face.step;
    say(byId("title"), face.title);
    const option = optionLine(clock, run);
    const name = byId("option");
    if (name.dataset.id !== (option?.id ?? "")) {
        name.dataset.id = option?.id ?? "";
        name.replaceChildren(...(option ? [mark(option), el("span", {}, option.name)] : []));
    }
    say(byId("digits"), face.digits);
    say(byId("line"), face.line);
    byId("caution").hidden = !face.caution;
    showActions(byId("primary"), face.primary ? [{ ...face.primary, id: `${face.primary.id}` }] : []);
    showActions(byId("secondary"), face.secondary);
    // What time brings stands in the part that scrolls: there it moves no button away from under the thumb.
    showActions(byId("ago"), face.ago ?? []);
    showAsks(clock, run);
    showShots(clock, run);
    showLast(clock);
    showCounts(clock);
    byId("back-to-clock").hidden = clock.viewed === null;
    say(byId("trouble"), clock.journal.trouble ?? "");
    byId("rehearsal").hidden = !simulated();
    say(byId("rehearsal"), speedNow() >= 2 ? `Made-up motor. Time runs ${Math.round(speedNow())} times as fast.` : "Made-up motor. Time flies while you drive, and while it cools.");
    announce(`${face.title}: ${face.step === "CountingDown" || face.step === "Driving" ? face.step === "Driving" ? "driving" : "counting down" : face.line}`, face.step);
    return face;
}

let announced = "";

/** Said to those who hear the page, once for each step. @param {string} text @param {string} step */
function announce(text, step) {
    if (announced === step) return;
    announced = step;
    say(byId("said"), text);
}

/** @param {RunClock} clock @param {import("./runs.js").Run | null} run */
function showAsks(clock, run) {
    const asks = asksOf(clock, run, clock.nowOf(run)).slice(0, 1);
    const place = byId("asks");
    const there = new Map([...place.children].map((child) => [/** @type {HTMLElement} */ (child).dataset.ask, /** @type {HTMLElement} */ (child)]));
    const wanted = asks.map((ask) => {
        const section = there.get(ask.id) ?? el("section", { class: "ask", "data-ask": ask.id }, el("p", {}), el("div", { class: "choices" }));
        say(/** @type {Element} */ (section.children[0]), ask.text);
        showActions(/** @type {HTMLElement} */ (section.children[1]), ask.actions);
        return section;
    });
    if (wanted.length !== place.children.length || wanted.some((one, index) => place.children[index] !== one)) place.replaceChildren(...wanted);
}

/** @param {RunClock} clock @param {import("./runs.js").Run | null} run */
function showShots(clock, run) {
    const waiting = clock.day.runs.filter((other) => other.id !== run?.id).flatMap((other) => other.shots.filter((shot) => shot.readC === null && !("windingHotMohm" in shot.fields)).map((shot) => ({ run: other, shot })));
    const own = run ? run.shots.map((shot) => ({ run, shot })) : [];
    const fresh = freshly(clock);
    const typed = (/** @type {{ run: import("./runs.js").Run, shot: import("./runs.js").Shot }} */ { run: of, shot }) => {
        const { shown, after } = shotLine(shot, of);
        const place = of.shots.indexOf(shot) + 1;
        return { id: `type-${shot.id}`, accent: shot.readC === null && !("windingHotMohm" in shot.fields), label: `${of === run ? "" : `Run ${of.fields.number ?? ""}, `}${of === run ? "S" : "s"}hot ${place}: ${shown}`, detail: after, act: () => void typeReading(clock, shot.id) };
    };
    showActions(byId("shots"), [...own.map(typed), ...(fresh && isShot(fresh) ? [takeBack(clock, fresh)] : []), ...waiting.map(typed)]);
    const hottest = Math.max(-Infinity, ...own.map(({ shot }) => shot.readC ?? -Infinity));
    say(byId("hot"), hottest >= burnsC ? `The can is hot enough to burn at a touch (from about ${temperature(burnsC, clock.unit)}).` : "Mind the hot can.");
}

let lastSaid = /** @type {unknown} */ (null);
let lastAt = 0;

/** What was noted last, with one tap to take it back; a shot's is beside its number, so that the page fits. @param {RunClock} clock */
function showLast(clock) {
    const fresh = freshly(clock);
    const here = fresh !== null && !isShot(fresh) ? fresh : null;
    say(byId("last-says"), here ? `${here.says}: noted` : "");
    showActions(byId("last-back"), here ? [takeBack(clock, here)] : []);
}

/** @typedef {NonNullable<RunClock["last"]>} Last */

/** What was noted a moment ago, while it is offered to be taken back. @param {RunClock} clock */
function freshly(clock) {
    if (clock.last !== lastSaid) {
        lastSaid = clock.last;
        lastAt = performance.now();
    }
    return clock.last && performance.now() - lastAt < lastShownMs ? clock.last : null;
}

/** @param {Last} last */
const isShot = (last) => last.entries.some((one) => one.kind === "shot");

/** @param {RunClock} clock @param {Last} last @returns {import("./dom.js").Action} */
const takeBack = (clock, last) => ({
    id: "take-back", label: "Take back", detail: isShot(last) ? last.says : "", act: (at) => {
        if (clock.last !== last) return;
        clock.last = null;
        if (last.entries.some((one) => one.kind === "run.stop")) clock.run() && clock.drivesOn(/** @type {import("./runs.js").Run} */ (clock.run()));
        void clock.journal.takeBack(last.entries.filter((one) => one.kind !== "run.begin"), at);
    },
});

/** @param {RunClock} clock */
function showCounts(clock) {
    const { counts, sending, bench } = clock.journal;
    const here = counts.here + counts.photosHere;
    say(byId("here"), here > 0 ? `${here} on this phone only` : "All saved");
    byId("counts").dataset.here = String(here);
    const refused = counts.aside + counts.photosAside;
    say(byId("refused"), refused > 0 ? `${counted(refused, "entry", "entries")} refused` : sending.state === "unpaired" ? "not paired" : sending.state === "unreachable" || !bench.reached ? "bench not reached" : "");
    document.body.dataset.writing = String(clock.journal.writing);
    byId("counts").dataset.state = refused > 0 || sending.state === "unpaired" || counts.unsaved > 0 ? "refused" : here > 0 ? "here" : "kept";
}

/** @param {RunClock} clock */
function camera(clock) {
    const input = /** @type {HTMLInputElement} */ (byId("camera"));
    clock.openCamera = () => {
        input.value = "";
        input.click();
    };
    input.addEventListener("change", () => void clock.photographed(input.files?.[0] ?? null));
    input.addEventListener("cancel", () => void clock.photographed(null));
}

/** Works without a network where the browser allows it: on localhost and over HTTPS. */
function offline() {
    const worker = document.body.dataset.worker;
    if (worker && "serviceWorker" in navigator) void navigator.serviceWorker.register(worker, { scope: "/clock/", updateViaCache: "none" }).catch(() => {});
}

async function start() {
    const unit = look();
    /** @type {RunClock | undefined} */
    let clock;
    let face = /** @type {import("./face.js").Face | null} */ (null);
    let drawing = false;
    const draw = () => {
        drawing = false;
        if (clock) face = show(clock);
    };
    // Many changes at once are drawn once. Not with the screen's frames: there are none while it is off.
    const later = () => {
        if (!drawing) queueMicrotask(draw);
        drawing = true;
    };
    const journal = await Journal.open(location.pathname.split("/").at(-1) ?? "", later);
    clock = new RunClock(journal);
    clock.unit = unit;
    await clock.recall();
    const running = clock;
    running.tell = (trouble) => {
        journal.trouble = trouble;
        draw();
    };
    running.rang = () => {
        document.body.classList.add("horn");
        setTimeout(() => document.body.classList.remove("horn"), 3_000);
    };
    camera(running);
    onPress(byId("more"), () => void more(running));
    onPress(byId("counts"), () => void outbox(running));
    onPress(byId("back-to-clock"), () => {
        running.viewed = null;
        draw();
    });
    listen({
        next: (at) => {
            running.horn.unlock();
            if (sheetUp() === "pick") hide();
            face?.next?.(at);
        },
        tooShort: (button) => {
            button.classList.add("too-short");
            say(byId("said"), "Too short: hold it for half a second.");
            setTimeout(() => button.classList.remove("too-short"), 1_500);
        },
        firm: () => shake(40),
    });
    window.addEventListener("pointerup", () => running.horn.unlock(), { capture: true });
    window.addEventListener("keydown", () => running.horn.unlock(), { capture: true });
    const tick = () => {
        running.tick();
        draw();
    };
    setInterval(tick, tickMs);
    document.addEventListener("visibilitychange", tick);
    tick();
    document.body.dataset.ready = "yes";
    performance.mark("ready");
    journal.start();
    offline();
}

start().catch((cause) => {
    const trouble = document.getElementById("trouble");
    if (trouble) trouble.textContent = `The run clock can't keep anything on this device (${cause instanceof Error ? cause.message : cause}). Private windows and full storage do that: use another window or another phone.`;
    document.body.dataset.ready = "failed";
});
