// Folds days with the run clock's own modules: a list of days comes in on standard input, what they add up to goes out. See MirrorTests.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const modules = process.argv[2];
const { foldDay } = await import(pathToFileURL(`${modules}/runs.js`).href);
const { runNow, nextNumber, plannedOption, currentRun } = await import(pathToFileURL(`${modules}/step.js`).href);

const stamp = (clocked) => (clocked ? { at: clocked.at, entry: clocked.counted.id, others: clocked.others.map((line) => line.id), spread: Math.round(clocked.spreadS * 1000), chosen: clocked.chosen } : null);

const answers = JSON.parse(readFileSync(0, "utf8")).map(({ day, now, shots, plan, entries }) => {
    const folded = foldDay(entries, day);
    return {
        runs: folded.runs.map((run) => {
            const at = runNow(run, now, shots);
            return {
                id: run.id, ids: run.ids, number: run.fields.number ?? null, option: run.fields.option ?? null, kind: run.fields.kind ?? null, step: at.step, since: Math.round(at.sinceS * 1000),
                left: at.leftS === null ? null : Math.round(at.leftS * 1000), shotsLeft: at.shotsLeft, owed: at.numbersOwed, go: stamp(run.go), stop: stamp(run.stop), halt: stamp(run.halt), powerOff: stamp(run.powerOff),
                stills: run.stills.map((still) => [still.down, still.up]), fanDead: run.fanDeadAt, because: run.because, laps: run.laps, before: run.fanBefore ? run.fanBefore.said.body.turning : null, charge: run.chargeMah,
                shots: run.shots.map((shot) => ({ id: shot.id, at: shot.at, read: shot.readC === null ? null : Math.round(shot.readC * 1000), photo: shot.photo })), coolings: run.coolings.map((cooling) => [cooling.begin, cooling.end]),
            };
        }),
        weather: folded.weather.map((weather) => weather.at), offers: folded.offers.map((offer) => [offer.number, offer.a, offer.b]), next: nextNumber(folded),
        planned: plannedOption(folded, plan ?? []), current: currentRun(folded, now, shots)?.id ?? null,
    };
});
process.stdout.write(JSON.stringify(answers));
