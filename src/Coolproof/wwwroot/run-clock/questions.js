// What a person is asked on a sheet, and what the answer says.
import { number, text } from "./entries.js";
import { pick, typeNumber } from "./sheets.js";
import { degrees, minutes, runTitle, timeOfDay, word } from "./words.js";

/** @typedef {import("./clock.js").RunClock} RunClock */
/** @typedef {import("./runs.js").Run} Run */

/** @param {string[]} words @returns {import("./sheets.js").Choice[]} */
const choices = (words) => words.map((id) => ({ id, label: word(id) }));

/** @param {RunClock} clock @param {Run | null} run */
export async function askOption(clock, run) {
    const options = clock.things.options;
    if (options.length === 0) return void (await pick("No options yet", [], "List the cooling options on the pit table; the run can go all the same, and its option be named later."));
    const chosen = await pick("Which cooling option is fitted?", options.map((option) => ({ id: option.id, label: option.name, look: option })));
    if (chosen) await clock.setDraft(run, { option: chosen.id }, chosen.at);
}

const usualMinutes = [3, 5, 6, 8, 10];

/** How long, what the run is for, with which pack. @param {RunClock} clock @param {Run | null} run */
export async function askThisRun(clock, run) {
    const draft = clock.draftOf(run);
    const what = await pick("How long is hard driving?", [
        ...usualMinutes.map((one) => ({ id: `drive-${one}`, label: minutes(60 * one), detail: 60 * one === draft.driveS ? "as it is" : "minutes" })), { id: "drive", label: "Another length", detail: minutes(draft.driveS) },
        { id: "kind", label: word(draft.kind), detail: "what the run is for" },
        ...(clock.things.packs.length > 0 ? [{ id: "pack", label: clock.things.packs.find((pack) => pack.id === draft.pack)?.name ?? "not said", detail: "pack" }] : []),
    ]);
    if (what?.id === "kind") await askKind(clock, run);
    else if (what?.id === "drive") await askDrive(clock);
    else if (what?.id === "pack") await askPack(clock, run);
    else if (what) await clock.setDraft(null, { driveS: 60 * Number(what.id.slice("drive-".length)) }, what.at);
}

/** @param {RunClock} clock @param {Run | null} run */
async function askKind(clock, run) {
    const chosen = await pick("What is this run for?", [
        { id: "test", label: "Test run", detail: "counts in the ranking" }, { id: "warm-up", label: "Warm-up", detail: "warms the motor, stays out of the ranking" },
        { id: "race", label: "Race", detail: "weak evidence: nobody controls its heat" }, { id: "void", label: "Void", detail: "counts for its warmth only" },
    ]);
    if (chosen) await clock.setDraft(run, { kind: chosen.id }, chosen.at);
}

/** @param {RunClock} clock @param {Run | null} run */
async function askPack(clock, run) {
    const chosen = await pick("Which pack?", clock.things.packs.map((pack) => ({ id: pack.id, label: pack.name })));
    if (chosen) await clock.setDraft(run, { pack: chosen.id }, chosen.at);
}

/** @param {RunClock} clock */
async function askDrive(clock) {
    const seconds = await typeNumber({ title: "How long is hard driving?", unit: "min:s", minutes: true, least: 1, most: 5999, note: "Minutes, then two digits of seconds: 530 is 5:30." });
    if (seconds !== null) await clock.setDraft(null, { driveS: seconds }, Date.now());
}

/** @param {RunClock} clock @param {Run | null} run */
export async function askCooling(clock, run) {
    const chosen = await pick("Cooling begins. With what?", choices(["shade", "own-fan", "pit-fan", "cooled-air"]), "No flammable duster or freeze spray on a hot motor.");
    if (chosen) await clock.beginCooling(run, chosen.id, chosen.at);
}

/** @param {RunClock} clock @param {Run} run */
export async function askAbandon(clock, run) {
    const chosen = await pick("Give this run up? Hold ½ s on the reason.", [
        { id: "crash", label: "Crash", firm: true }, { id: "marshal call", label: "Marshal call", firm: true }, { id: "something broke", label: "Something broke", firm: true },
        { id: "pack empty", label: "Pack empty", firm: true }, { id: "rain", label: "Rain", firm: true }, { id: "another reason", label: "Another reason", firm: true },
    ], "The warmth that it leaves is kept; it stays out of the ranking.");
    if (chosen) await clock.abandon(run, chosen.id, chosen.at);
}

/** @param {RunClock} clock @param {Run} run */
export async function askWhyShort(clock, run) {
    const chosen = await pick("Why did hard driving end early?", [...choices(["crash", "pack", "rain", "controller", "other"]), { id: "no", label: "It was meant to" }]);
    if (chosen) await clock.setRun(run, { cutShort: chosen.id }, chosen.at);
}

/** @param {RunClock} clock @param {Run} run */
export async function askStopAgo(clock, run) {
    const opened = Date.now();
    const seconds = await typeNumber({ title: "How long ago did hard driving end?", unit: "s ago", least: 0, most: 7200, note: "Counted from when this sheet came up." });
    if (seconds !== null) await clock.stopAt(run, opened, seconds);
}

/** @param {RunClock} clock @param {Run} run */
export async function askCharge(clock, run) {
    const mah = await typeNumber({ title: "How much went back into the pack?", unit: "mAh", least: 10, most: 30000, note: `${runTitle(run)}. Packs cool first, and are charged attended and fire-safe.` });
    if (mah !== null) await clock.charge(run, mah, Date.now());
}

/** @param {RunClock} clock */
export async function askRole(clock) {
    const chosen = await pick("What does this device do?", [
        { id: "clock", label: "Clock", detail: "its go, stop and halt count" }, { id: "driver", label: "Driver" }, { id: "gun", label: "Gun", detail: "it takes the shots" }, { id: "any", label: "Everything", detail: "I am alone" },
    ]);
    if (chosen) await clock.setRole(chosen.id, chosen.at);
}

/** Gun, spot, hold and surface of the shots from now on. @param {RunClock} clock */
export async function askAim(clock) {
    const aim = clock.aim;
    const guns = clock.things.instruments;
    const what = await pick("What do the next shots use?", [
        { id: "instrument", label: guns.find((gun) => gun.id === aim.instrument)?.name ?? "Gun, not named", detail: "instrument" }, { id: "spot", label: word(aim.spot), detail: "spot" },
        { id: "hold", label: word(aim.hold), detail: "what the display shows" }, { id: "surface", label: word(aim.surface), detail: "what the spot lies on" },
    ], "Never aim the laser at eyes or the drivers' stand.");
    if (!what) return;
    const lists = { spot: ["can", "endbell", "fin", "through-vent", "winding", "esc"], hold: ["single", "max", "average"], surface: ["tape", "paint", "bare", "unknown"] };
    const chosen = what.id === "instrument"
        ? await pick("Which instrument?", guns.map((gun) => ({ id: gun.id, label: gun.name })), guns.length === 0 ? "None is listed yet: add it under Guns on the pit table." : "")
        : await pick(`Which ${what.id}?`, choices(lists[/** @type {keyof typeof lists} */ (what.id)]));
    if (chosen) await clock.setAim({ [what.id]: chosen.id });
    await askAim(clock);
}

/** The air, and sky, wind and track where they are known. @param {RunClock} clock */
export async function askAir(clock) {
    const unit = clock.unit;
    const at = Date.now();
    const value = await typeNumber({ title: "Air in the shade, near the track", unit: degrees(unit), negative: true, least: unit === "f" ? -22 : -30, most: unit === "f" ? 140 : 60, note: "Not the table, not the sun." });
    if (value === null) return;
    const airC = unit === "f" ? Math.round(((value - 32) * 500) / 9) / 100 : value;
    const by = await pick("Where does it come from?", choices(["thermometer", "forecast", "gun"]));
    // The air is kept whatever else is said.
    await clock.weather({ airC, airBy: by?.id ?? "thermometer" }, at);
    if (by) await askSky(clock);
}

/** @param {RunClock} clock */
export async function askSky(clock) {
    for (const [field, title, words] of /** @type {const} */ ([["sky", "The sky?", ["sun", "cloud", "dusk", "indoor"]], ["wind", "The wind?", ["calm", "light", "strong"]], ["track", "The track?", ["dry", "damp", "wet"]]])) {
        const chosen = await pick(title, choices([...words]));
        if (!chosen) return;
        await clock.weather({ [field]: chosen.id }, chosen.at);
    }
}

/** The number of a shot, typed whenever there is time: the stamp stays where it is. @param {RunClock} clock @param {string} id */
export async function typeReading(clock, id) {
    const found = clock.findShot(id);
    if (!found) return;
    const { run, shot } = found;
    const unit = clock.unitOf(text(shot.fields, "instrument"));
    const name = clock.things.instruments.find((one) => one.id === shot.fields.instrument)?.name ?? "gun";
    const after = run.halt && shot.at !== null ? `${minutes((shot.at - run.halt.at) / 1000)} after the halt` : shot.at !== null ? `at ${timeOfDay(shot.at)}` : "no time noted";
    const place = run.shots.findIndex((one) => one.id === id) + 1;
    const shownIn = shot.shown?.unit ?? unit;
    const again = () => void typeReading(clock, id);
    const nudge = (/** @type {number} */ seconds) => async (/** @type {number} */ at) => {
        if (shot.trigger) await clock.nudge(shot.trigger, seconds, at);
        again();
    };
    const value = await typeNumber({
        title: `${runTitle(run)}, shot ${place}`, unit: degrees(shownIn), start: shot.shown ? String(shot.shown.value) : "", negative: false,
        least: -40, most: shownIn === "f" ? 662 : 350, wrong: "can't be a reading", save: "Save the number",
        note: `${after}; ${name} on ${word(text(shot.fields, "spot") ?? "can")}, ${word(text(shot.fields, "hold") ?? "single")}. Saving never moves the stamp.`,
        extra: [
            { id: "shot-earlier", label: "−1 s", detail: "trigger earlier", act: nudge(-1) }, { id: "shot-later", label: "+1 s", detail: "trigger later", act: nudge(1) },
            { id: "shot-photograph", label: shot.photo ? "Another photo" : "Photo", detail: "of the display", act: () => clock.photograph(id) },
            { id: "shot-remove", label: "No shot", detail: "take it out", act: (at) => void clock.removeShot(shot.id, at).then(() => clock.closeSheet()) },
        ],
    });
    if (value !== null) await clock.read(shot, value, shownIn, Date.now());
}

/** Whether a number of the run is typed: for the list. @param {import("./runs.js").Shot} shot @param {Run} run */
export function shotLine(shot, run) {
    const after = run.halt && shot.at !== null ? `${minutes((shot.at - run.halt.at) / 1000)} after the halt` : shot.at !== null ? timeOfDay(shot.at) : "";
    const shown = shot.shown ? `${shot.shown.value} ${degrees(shot.shown.unit)}` : number(shot.fields, "windingHotMohm") !== null ? `${shot.fields.windingHotMohm} mΩ` : shot.photo ? "photo: type the number" : "type the number";
    return { shown, after: [after, word(text(shot.fields, "spot") ?? "can"), shot.fields.hold === "max" ? "max" : ""].filter(Boolean).join(", ") };
}
