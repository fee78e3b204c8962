// The questions about the teeth open as soon as the jaw is read here, and what a fold is closed over says what is chosen
// in it; without script one tap opens either.

const form = document.querySelector("form.deer");
const cues = form.querySelector("details.cues");

/** What is chosen in a field: a select's or a radio button's words. */
function words(name) {
    const field = form.elements[name];
    return field.selectedOptions?.[0].text
        ?? form.querySelector(`[name="${name}"]:checked`)?.closest("label").textContent.trim();
}

form.addEventListener("change", event => {
    if (cues && event.target.name === "jawStatus") {
        cues.open = event.target.value === "READ";
    }
    for (const summary of form.querySelectorAll("summary[data-says]")) {
        summary.textContent = summary.dataset.says.split(" ").map(words).filter(Boolean).join(", ") + summary.dataset.then;
    }
});
