// Opens the questions about the teeth as soon as the jaw is read here; without script one tap opens them.

const cues = document.querySelector("form.deer details.cues");

for (const choice of document.querySelectorAll("form.deer [name=jawStatus]")) {
    choice.addEventListener("change", () => {
        if (cues) {
            cues.open = choice.value === "READ";
        }
    });
}
