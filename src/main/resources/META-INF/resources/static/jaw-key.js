// Keys for the exam: 1 to 9 pick an answer, Enter takes the one that has the focus, Backspace goes back one question.
// The page works without them: every answer is a link.

const typing = "input, textarea, select, [contenteditable]";

window.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target.closest?.(typing)) {
        return;
    }
    const target = event.key === "Backspace"
        ? document.querySelector("[data-back]")
        : /^[1-9]$/.test(event.key) && document.querySelector(`[data-pick="${event.key}"]`);
    if (target) {
        // A scanned code starts with a letter, so a digit here is an answer and not for the scan box.
        event.preventDefault();
        event.stopPropagation();
        target.click();
    }
}, true);

// Ready for Enter: at the end on "Another jaw", before that on the question's first answer.
const ready = document.querySelector(".answer") ? document.querySelector("[data-again]") : document.querySelector("[data-first]");
ready?.focus({ preventScroll: true });

// On a phone the strip of answers scrolls: show its end.
document.querySelector(".said li:last-child")?.scrollIntoView({ block: "nearest", inline: "end" });
