// Keeps the page of first steps, as anybody without an account sees it, for when there is no signal. Its scope is that
// page alone; it stands at the root because a worker reaches no further than the folder it is served from.
const KEPT = "first-steps-1";
const PAGE = "/first-steps";
const PARTS = [PAGE, "/static/dentary.css", "/static/dentary.js", "/static/plan-first-steps.js", "/static/mark.svg"];
const PATIENCE_MILLISECONDS = 3000;

async function fetchAndKeep(path) {
  const answer = await fetch(path, {credentials: "omit", cache: "no-cache"});
  if (answer.ok) {
    const kept = await caches.open(KEPT);
    await kept.put(path, answer.clone());
  }
  return answer;
}

async function freshOrKept(path) {
  const kept = await caches.match(path);
  const fresh = fetchAndKeep(path);
  if (!kept) {
    return fresh;
  }
  fresh.catch(() => {});
  const tooSlow = new Promise(resolve => setTimeout(() => resolve(kept), PATIENCE_MILLISECONDS));
  try {
    const first = await Promise.race([fresh, tooSlow]);
    return first.ok ? first : kept;
  } catch {
    return kept;
  }
}

self.addEventListener("install", event => {
  self.skipWaiting();
  event.waitUntil(Promise.all(PARTS.map(fetchAndKeep)));
});

self.addEventListener("fetch", event => {
  const address = new URL(event.request.url);
  if (event.request.method === "GET" && address.origin === location.origin && PARTS.includes(address.pathname)) {
    event.respondWith(freshOrKept(address.pathname));
  }
});
