// Entries of the journal as docs/formats/entries.md has them, made on this device.

/** @typedef {string | number | boolean | null | string[]} Value */
/** @typedef {Record<string, Value>} Body */
/** @typedef {{ id: string, kind: string, at: string, about: string, corrects: string | null, body: Body }} Entry */
/** @typedef {Entry & { device: string, seq?: number, kept?: string }} Said an entry with its author */

let lastMs = 0;
let counter = 0;

/**
 * A UUID of version 7 (RFC 9562, section 6.2 method 1): the instant, then a counter, then chance, so that ids made one after another sort in that order.
 * @param {number} nowMs the device's clock, ms since 1970
 */
export function uuid7(nowMs) {
    const chance = crypto.getRandomValues(new Uint8Array(10));
    if (nowMs > lastMs) {
        lastMs = Math.floor(nowMs);
        counter = ((chance[8] << 8) | chance[9]) & 0x7ff; // its upper half is room to count in
    } else {
        counter++;
        if (counter > 0xfff) {
            lastMs++;
            counter = 0;
        }
    }
    const time = lastMs.toString(16).padStart(12, "0");
    const rest = [...chance.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
    const variant = ((chance[0] & 0x3f) | 0x80).toString(16);
    return `${time.slice(0, 8)}-${time.slice(8)}-7${counter.toString(16).padStart(3, "0")}-${variant}${rest.slice(2, 4)}-${rest.slice(4)}`;
}

/**
 * An entry.
 * @param {string} kind its kind
 * @param {string} about the thing that it speaks of
 * @param {Body} body what it says
 * @param {number} atMs the device's clock at the tap, ms since 1970
 * @returns {Entry}
 */
export function entry(kind, about, body, atMs) {
    return { id: uuid7(Date.now()), kind, at: new Date(atMs).toISOString(), about, corrects: null, body };
}

/** A number of a body; null when it is not there or none. @param {Body} body @param {string} name @returns {number | null} */
export const number = (body, name) => (typeof body[name] === "number" ? /** @type {number} */ (body[name]) : null);

/** A text of a body; null when it is not there or none. @param {Body} body @param {string} name @returns {string | null} */
export const text = (body, name) => (typeof body[name] === "string" ? /** @type {string} */ (body[name]) : null);
