// The deer that wait on this device until they can be sent: one entry a kit, written to disk before anybody is told so.
// {kit, account, keptAt, fields, problems: [{field, message}]}
const DEER = "kept-deer";

function opened() {
    return new Promise((resolve, reject) => {
        const request = indexedDB.open("dentary", 1);
        request.onupgradeneeded = () => request.result.createObjectStore(DEER, {keyPath: "kit"});
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
    });
}

async function act(mode, work) {
    const database = await opened();
    try {
        return await new Promise((resolve, reject) => {
            const transaction = database.transaction(DEER, mode, {durability: "strict"});
            const request = work(transaction.objectStore(DEER));
            transaction.oncomplete = () => resolve(request.result);
            transaction.onabort = () => reject(transaction.error);
        });
    } finally {
        database.close();
    }
}

/** All that wait, the longest waiting first. */
export const all = async () =>
    (await act("readonly", deer => deer.getAll())).sort((a, b) => a.keptAt.localeCompare(b.keptAt));

/** The one of a kit, or undefined. */
export const find = kit => act("readonly", deer => deer.get(kit));

/** Keeps one in place of what the kit had. */
export const put = one => act("readwrite", deer => deer.put(one));

export const remove = kit => act("readwrite", deer => deer.delete(kit));
