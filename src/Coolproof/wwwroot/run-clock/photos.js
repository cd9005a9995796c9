// A photo of the gun's display: shrunk on the phone, kept there before anything is sent.
import { uuid7 } from "./entries.js";

const longSidePx = 1280;
const quality = 0.8;
const largestBytes = 8_000_000;

/** @typedef {{ id: string, type: string, bytes: ArrayBuffer, width: number, height: number }} Photo */

/**
 * Shrinks a photo; drawing it anew also leaves out where and with what it was taken.
 * @param {Blob} file
 * @returns {Promise<Photo>}
 */
export async function shrink(file) {
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => null);
    if (!picture) throw new Error("This file is no photo that the phone can read.");
    const scale = Math.min(1, longSidePx / Math.max(picture.width, picture.height));
    const width = Math.max(1, Math.round(picture.width * scale));
    const height = Math.max(1, Math.round(picture.height * scale));
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    canvas.getContext("2d")?.drawImage(picture, 0, 0, width, height);
    picture.close();
    const blob = await new Promise((/** @type {(blob: Blob | null) => void} */ resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
    if (!blob || blob.size > largestBytes) throw new Error("The phone could not shrink this photo.");
    return { id: uuid7(Date.now()), type: blob.type, bytes: await blob.arrayBuffer(), width, height };
}
