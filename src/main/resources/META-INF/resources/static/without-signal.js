// On every page: has the browser keep the first steps, so that they open without a signal. On the pages of the intake it
// keeps the form for deer without a signal too, with all it shows and needs.
const KEPT = "without-signal-1";
const INTAKE = "/intake/without-signal";
const FRESH_FOR_MILLISECONDS = 3_600_000;

async function keepIntake() {
  const kept = await caches.open(KEPT);
  const before = await kept.match(INTAKE);
  const age = before ? Date.now() - Date.parse(before.headers.get("Date")) : Infinity;
  if (age < FRESH_FOR_MILLISECONDS && location.pathname !== INTAKE) {
    return;
  }
  const answer = await fetch(INTAKE, {redirect: "manual"});
  if (!answer.ok) {
    return;
  }
  const page = new DOMParser().parseFromString(await answer.clone().text(), "text/html");
  const parts = [...page.querySelectorAll("script[src], link[href]:not([rel=alternate]), img[src]")]
    .map(part => part.getAttribute("src") ?? part.getAttribute("href"));
  // The page last: it is never kept without its parts.
  await kept.addAll(new Set(parts));
  await kept.put(INTAKE, answer);
}

if ("serviceWorker" in navigator) {
  const register = scope => navigator.serviceWorker.register("/without-signal-worker.js", {scope}).catch(() => {
    // without a worker the page still opens as long as there is a signal
  });
  register("/first-steps");
  if (location.pathname === "/sign-in") {
    // the form bears the name of who kept it: whoever comes next has one made anew
    caches.open(KEPT).then(kept => kept.delete(INTAKE)).catch(() => {});
  }
  if (location.pathname.startsWith("/intake")) {
    register("/intake");
    keepIntake().catch(() => {
      // the signal went; what was kept before stays
    });
  }
}
