// What this device keeps for itself, in IndexedDB: a write is over only when its transaction is complete and, where the browser can tell, on the disk.

/** @typedef {"entries" | "bench" | "photos" | "notes"} StoreName */

const name = "coolproof-run-clock";

/** @returns {Promise<IDBDatabase>} */
export function openDatabase() {
    return new Promise((resolve, reject) => {
        const request = indexedDB.open(name, 1);
        request.onupgradeneeded = () => {
            const db = request.result;
            const entries = db.createObjectStore("entries", { keyPath: "id" }); // made here
            entries.createIndex("day", "day");
            entries.createIndex("state", "state");
            db.createObjectStore("bench", { keyPath: "id" }).createIndex("day", "day"); // fetched from the bench
            db.createObjectStore("photos", { keyPath: "id" }).createIndex("state", "state");
            db.createObjectStore("notes"); // single values by name
        };
        request.onsuccess = () => {
            // A newer page in another tab may change the layout: this one lets go, and its taps say that they can't be kept.
            request.result.onversionchange = () => request.result.close();
            resolve(request.result);
        };
        request.onerror = () => reject(request.error);
        request.onblocked = () => reject(new Error("an older run clock is open in another tab"));
    });
}

/**
 * Writes in one transaction; fulfilled only when it is complete.
 * @param {IDBDatabase} db
 * @param {StoreName[]} stores
 * @param {(store: (name: StoreName) => IDBObjectStore, done: { result: unknown }) => void} work queues requests; may put what it finds into `done.result`
 * @returns {Promise<unknown>}
 */
export function write(db, stores, work) {
    return new Promise((resolve, reject) => {
        const transaction = db.transaction(stores, "readwrite", { durability: "strict" });
        const done = { result: /** @type {unknown} */ (undefined) };
        transaction.oncomplete = () => resolve(done.result);
        transaction.onabort = () => reject(transaction.error ?? new Error("the phone's storage gave up"));
        work((store) => transaction.objectStore(store), done);
    });
}

/**
 * Reads one request's result.
 * @template T
 * @param {IDBDatabase} db
 * @param {StoreName} store
 * @param {(store: IDBObjectStore) => IDBRequest<T>} work
 * @returns {Promise<T>}
 */
export function read(db, store, work) {
    return new Promise((resolve, reject) => {
        const request = work(db.transaction(store, "readonly").objectStore(store));
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
    });
}
