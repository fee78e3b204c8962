// Opens without a signal what must open without one: the first steps, as anybody without an account sees them, and the
// form that keeps deer on the device. It is registered for either address alone, and stands at the root because a worker
// reaches no further than the folder it is served from. The form is kept by the pages of the intake (without-signal.js).
const KEPT = "without-signal-1";
const STEPS = "/first-steps";
const STEPS_PARTS = [STEPS, "/static/dentary.css", "/static/dentary.js", "/static/without-signal.js", "/static/mark.svg"];
const INTAKE = "/intake/without-signal";
const PATIENCE_MILLISECONDS = 3000;
const FAULTS_OF_THE_SERVICE = 500;

async function fetchAndKeep(path) {
  const answer = await fetch(path, {credentials: "omit", cache: "no-cache"});
  if (answer.ok) {
    const kept = await caches.open(KEPT);
    await kept.put(path, answer.clone());
  }
  return answer;
}

/** What the service answers; what was kept, where it does not, or too slowly. */
async function freshOrKept(path, ask) {
  const kept = await caches.match(path);
  const fresh = ask();
  if (!kept) {
    return fresh;
  }
  fresh.catch(() => {});
  const tooSlow = new Promise(resolve => setTimeout(() => resolve(kept), PATIENCE_MILLISECONDS));
  try {
    const first = await Promise.race([fresh, tooSlow]);
    return first.status < FAULTS_OF_THE_SERVICE ? first : kept;
  } catch {
    return kept;
  }
}

self.addEventListener("install", event => {
  self.skipWaiting();
  event.waitUntil(Promise.all(STEPS_PARTS.map(fetchAndKeep)));
});

self.addEventListener("fetch", event => {
  const {request} = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) {
    return;
  }
  if (STEPS_PARTS.includes(address.pathname)) {
    event.respondWith(freshOrKept(address.pathname, () => fetchAndKeep(address.pathname)));
  } else if (address.pathname.startsWith("/intake") && request.mode === "navigate" && address.pathname !== INTAKE) {
    event.respondWith(fetch(request).catch(() => Response.redirect(INTAKE)));
  } else if (address.pathname === INTAKE || request.mode !== "navigate") {
    event.respondWith(freshOrKept(address.pathname, () => fetch(request)));
  }
});
