// What is rarely wanted: corrections, the runs of the day, what is not on the bench yet.
import { button, el } from "./dom.js";
import { askAir, askRole, shotLine, typeReading } from "./questions.js";
import { hide, open, pick, typeNumber } from "./sheets.js";
import { counted, minutes, runTitle, timeOfDay, word } from "./words.js";

/** @typedef {import("./clock.js").RunClock} RunClock */
/** @typedef {import("./runs.js").Run} Run */
/** @typedef {import("./runs.js").Clocked} Clocked */

/** @param {RunClock} clock */
export async function more(clock) {
    const run = clock.run();
    const isVoid = run?.fields.kind === "void";
    const chosen = await pick("More", [
        ...(run ? [{ id: "stamps", label: "Stamps and corrections", detail: runTitle(run) }, isVoid ? { id: "count", label: "Count this run", detail: "not void" } : { id: "void", label: "This run is void", detail: "keeps its warmth, leaves the ranking" }] : []),
        { id: "runs", label: "Runs of the day", detail: counted(clock.day.runs.length, "run", "runs") }, { id: "air", label: "Weather", detail: "air, sky, wind, track" },
        { id: "outbox", label: "Not on the bench yet", detail: `${clock.journal.counts.here} on this phone only` }, { id: "role", label: "This device", detail: clock.role ? word(clock.role) : "what does it do?" },
        { id: "lead", label: `Countdown ${clock.leadS} s`, detail: "change" }, { id: "sound", label: "Try the horn", detail: clock.horn.ready ? "" : "silent so far" },
    ], clock.limits().join(" "));
    if (!chosen) return;
    if (chosen.id === "stamps" && run) await stamps(clock, run.id);
    else if (chosen.id === "void" && run) await clock.setRun(run, { kind: "void" }, chosen.at);
    else if (chosen.id === "count" && run) await clock.setRun(run, { kind: "test" }, chosen.at);
    else if (chosen.id === "runs") await runs(clock);
    else if (chosen.id === "air") await askAir(clock);
    else if (chosen.id === "outbox") await outbox(clock);
    else if (chosen.id === "role") await askRole(clock);
    else if (chosen.id === "lead") await lead(clock);
    else if (chosen.id === "sound") clock.horn.keep({ key: `try ${Date.now()}`, goMs: Date.now() - 10_000, endMs: Date.now() + 300 });
}

/** @param {RunClock} clock */
async function lead(clock) {
    const seconds = await typeNumber({ title: "How long is the countdown?", unit: "s", start: String(clock.leadS), least: 3, most: 600 });
    if (seconds === null) return;
    clock.leadS = Math.round(seconds);
    await clock.journal.outbox.setNote("lead", clock.leadS);
    clock.journal.changed();
}

/** @param {RunClock} clock */
async function runs(clock) {
    const chosen = await pick("Runs of the day", [...clock.day.runs].reverse().map((run) => ({
        id: run.id, label: runTitle(run), detail: [clock.things.options.find((one) => one.id === run.fields.option)?.name ?? "no option", run.go ? timeOfDay(run.go.at) : "", counted(run.shots.length, "shot", "shots")].filter(Boolean).join(", "),
        look: clock.things.options.find((one) => one.id === run.fields.option) ?? null,
    })), clock.day.runs.length === 0 ? "None yet." : "");
    if (!chosen) return;
    clock.viewed = chosen.id;
    clock.settingUp = false;
    clock.journal.changed();
}

/** Every stamp of a run with what moves it; the originals stay. @param {RunClock} clock @param {string} id @returns {Promise<void>} */
export async function stamps(clock, id) {
    const run = clock.day.runs.find((one) => one.ids.includes(id));
    if (!run) return;
    const again = (/** @type {Promise<unknown>} */ done) => void done.then(() => stamps(clock, id));
    const rows = /** @type {const} */ ([["go", "run.go", run.go], ["stop", "run.stop", run.stop], ["halt", "run.halt", run.halt], ["power-off", "run.power-off", run.powerOff]]).flatMap(([event, kind, stamp]) => (stamp ? [stampRow(clock, run, event, kind, stamp, again)] : []));
    const shots = run.shots.map((shot, index) => {
        const line = shotLine(shot, run);
        return el("section", { class: "stamp" }, el("h3", {}, `Shot ${index + 1}: ${line.shown}`), el("p", {}, line.after), el("div", { class: "choices" }, button({ id: `open-${shot.id}`, label: "Change", act: () => void typeReading(clock, shot.id) })));
    });
    await open(`${runTitle(run)}: stamps`, rows.length + shots.length > 0 ? [...rows, ...shots] : [el("p", {}, "Nothing is stamped yet.")]);
}

/** @param {RunClock} clock @param {Run} run @param {string} event @param {string} kind @param {Clocked} stamp @param {(done: Promise<unknown>) => void} again */
function stampRow(clock, run, event, kind, stamp, again) {
    const of = stamp.counted;
    const from = run.go && kind !== "run.go" ? `, ${minutes((stamp.at - run.go.at) / 1000)} after go` : "";
    const others = stamp.others.map((other) => el("div", {}, el("p", {}, `${clock.deviceName(other.said.device)}: ${timeOfDay(other.at)}, kept`),
        button({ id: `use-${other.id}`, label: "Let this one count", act: (at) => again(clock.choose(run, event, other.id, at)) })));
    return el("section", { class: "stamp" }, el("h3", {}, word(kind)), el("p", {}, `${timeOfDay(stamp.at)}${from}, by ${clock.deviceName(of.said.device)}${of.nudgedS ? `, moved by ${of.nudgedS} s` : ""}`),
        el("div", { class: "choices" },
            button({ id: `earlier-${of.id}`, label: "−1 s", detail: "earlier", act: (at) => again(clock.nudge(of, -1, at)) }), button({ id: `later-${of.id}`, label: "+1 s", detail: "later", act: (at) => again(clock.nudge(of, 1, at)) }),
            button({ id: `back-${of.id}`, label: "Take it back", act: (at) => again(clock.journal.takeBack([of.said], at)) })), ...others);
}

/** What is on this phone only, what the bench refused and why. @param {RunClock} clock */
export async function outbox(clock) {
    const { counts, outbox: box, sending } = clock.journal;
    const aside = await box.aside();
    const state = { rest: "The bench answers.", sending: "Sending.", unreachable: "The bench can't be reached. Nothing is lost: everything is sent when it answers.", unpaired: "The bench does not know this device: pair it on the bench's page Connect.", refused: "The bench refused something." }[sending.state];
    const refused = aside.map((one) => el("li", {}, `${word(one.entry.kind)} of ${timeOfDay(Date.parse(one.entry.at))}: ${one.reason ?? ""}`));
    await open("On this phone and on the bench", [
        el("p", {}, `${counts.here} on this phone only, ${counts.kept} on the bench. ${state}`),
        ...(counts.photosHere + counts.photosAside > 0 ? [el("p", {}, `${counted(counts.photosHere, "photo", "photos")} on this phone only${counts.photosAside > 0 ? `, ${counts.photosAside} refused` : ""}.`)] : []),
        ...(aside.length > 0 ? [el("h3", {}, "Refused by the bench, kept here"), el("ul", {}, ...refused)] : []),
        el("div", { class: "choices" },
            button({ id: "send-now", label: "Send now", act: () => void sendAgain(clock).then(hide) }),
            button({ id: "save-copy", label: "Save a copy", detail: "as a file on this phone", act: () => void saveCopy(clock) })),
    ]);
}

/** @param {RunClock} clock */
async function sendAgain(clock) {
    const aside = await clock.journal.outbox.aside();
    await clock.journal.outbox.mark(new Map(aside.map((one) => [one.id, { state: /** @type {const} */ ("here"), reason: null }])));
    clock.journal.sending.now();
}

/** @param {RunClock} clock */
async function saveCopy(clock) {
    const file = new Blob([await clock.journal.outbox.copy()], { type: "application/json" });
    const link = /** @type {HTMLAnchorElement} */ (el("a", { href: URL.createObjectURL(file), download: `coolproof-phone-${new Date().toISOString().slice(0, 19).replace(/[:T]/g, "-")}.json` }));
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
