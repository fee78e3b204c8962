// On every page: has the browser keep the first steps, so that they open without a signal.
if ("serviceWorker" in navigator) {
  navigator.serviceWorker.register("/first-steps-worker.js", {scope: "/first-steps"}).catch(() => {
    // without a worker the page still opens as long as there is a signal
  });
}
