// Photos that are not sent yet, kept in the browser until they are: a photo taken from within a page may exist nowhere else.
const name = "markreader", store = "photos";

export const keepPhoto = (visit, file) => use("readwrite", (photos) => photos.put(file, visit));

export const keptPhoto = (visit) => use("readonly", (photos) => photos.get(visit));

export const forgetPhoto = (visit) => use("readwrite", (photos) => photos.delete(visit));

// Without a store, as in some private windows, the page works all the same.
async function use(mode, work) {
  try {
    const database = await done(open());
    const answer = await done(work(database.transaction(store, mode).objectStore(store)));
    database.close();
    return answer;
  } catch {
    return undefined;
  }
}

function open() {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(store);
  return request;
}

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
