// Scanning aids. Every page works without them.

/** What a scanner may send around a code: control characters such as STX, and after them a symbology identifier (]C0). */
const CONTROL = /[\u0000-\u001f\u007f]/g;
const IDENTIFIER = /^\][A-Za-z][0-9A-Za-z]/;
/** Milliseconds between two keys that no hand can strike. */
const QUICK = 50;

/** What a scanner sent, without its prefix and suffix. */
function stripped(text) {
    return text.replace(CONTROL, "").trim().replace(IDENTIFIER, "");
}

let audio;

function tone(hertz, from, seconds) {
    try {
        audio ??= new AudioContext();
        const voice = audio.createOscillator();
        const loudness = audio.createGain();
        voice.type = "square";
        voice.frequency.value = hertz;
        loudness.gain.value = 0.15;
        voice.connect(loudness).connect(audio.destination);
        voice.start(audio.currentTime + from);
        voice.stop(audio.currentTime + from + seconds);
    } catch {
        // No sound on this device: the flash and the words remain.
    }
}

/** Two low tones and a flash: this scan was not what was asked for. */
export function wrongScan() {
    tone(220, 0, 0.18);
    tone(165, 0.24, 0.3);
    const root = document.documentElement.querySelector("body");
    root.classList.remove("wrong-scan");
    void root.offsetWidth;
    root.classList.add("wrong-scan");
    navigator.vibrate?.([120, 60, 240]);
}

/** One short high tone: taken. */
export function rightScan() {
    tone(1320, 0, 0.07);
}

/** The field a scan belongs in: the first of the page's own that can be seen, else the one that finds anything. */
function scanField() {
    return [...document.querySelectorAll("main [data-scan]")].find((field) => field.checkVisibility())
        ?? document.querySelector("#scan");
}

const typing = "input:not([type=checkbox], [type=radio], [type=button], [type=submit]), textarea, select, [contenteditable]";

// A scanner types wherever the cursor is. Where no field has it, the first character moves it to where scans belong. A list
// of choices would take each character for a choice: it gets its choice back, and the scan goes where it belongs.
let before = { key: "", at: 0, field: null, value: "" };
document.addEventListener("keydown", (event) => {
    const field = scanField();
    const at = event.target;
    const plain = event.key.length === 1 && event.key !== " " && !event.ctrlKey && !event.metaKey && !event.altKey;
    if (!field || !plain) {
        return;
    }
    if (!at.closest(typing)) {
        field.focus();
    } else if (at.matches("select:not([multiple])")) {
        if (before.field === at && event.timeStamp - before.at < QUICK) {
            at.value = before.value;
            field.value = field.matches("textarea") ? field.value + before.key : before.key;
            field.focus();
            field.setSelectionRange(field.value.length, field.value.length);
        } else {
            before = { key: event.key, at: event.timeStamp, field: at, value: at.value };
        }
    }
});

// Prefix and suffix go before the form does; a Tab as suffix, sent at a scanner's speed, does what Enter does: it sends
// one code and begins the next line of many.
let last = 0;
document.addEventListener("keydown", (event) => {
    const field = event.target;
    if (field.matches?.("#scan, [data-scan]")) {
        const typed = field.value.slice(0, field.selectionStart);
        if (event.key === "Tab" && !event.shiftKey && /[^\n]$/.test(typed) && event.timeStamp - last < QUICK && field.form) {
            event.preventDefault();
            if (field.matches("textarea")) {
                field.setRangeText("\n", field.selectionStart, field.selectionEnd, "end");
                field.dispatchEvent(new InputEvent("input", {inputType: "insertLineBreak", bubbles: true}));
            } else {
                field.form.requestSubmit();
            }
        }
        last = event.timeStamp;
    }
}, true);
document.addEventListener("submit", (event) => {
    for (const field of event.target.querySelectorAll("#scan, input[data-scan]")) {
        field.value = stripped(field.value);
    }
}, true);

// The page asks for a scan: be ready for it, and say at once whether the one before was right. Where the eyes are on the
// jar, the field that has the cursor tells by its description what stands above it in words.
const own = document.querySelector("main input[data-scan]");
const lines = document.querySelector("main textarea[data-scan]");
const wrong = document.querySelector(".fault[data-wrong-scan]")
    ?? (own && document.querySelector("main .fault:not([hidden])"))
    ?? (lines && document.querySelector("main .fault[role=alert]:not([hidden])"));
const right = (own ?? lines) && document.querySelector("main :is(.done, .ok)[role=status]");
const told = document.querySelector("main .fault[role=alert]:not([hidden])") ?? right;
if (own && told) {
    told.id ||= "told";
    own.setAttribute("aria-describedby", `${told.id} ${own.getAttribute("aria-describedby") ?? ""}`.trim());
}
// What a refused scan left in the field is selected, so that the next one replaces it, also where autofocus came first.
if (own && [document.body, null, own].includes(document.activeElement)) {
    own.focus({ preventScroll: true });
    own.select();
}
if (wrong) {
    wrongScan();
} else if (right) {
    rightScan();
}

// On a phone the answer comes first: what it is asked of stands in one line above it, and opens.
for (const form of document.querySelectorAll("form[data-fold]")) {
    if (matchMedia("(max-width: 47.99rem)").matches && !document.querySelector("main .fault")) {
        const chosen = [...form.querySelectorAll(":scope > p > select")]
            .map((select) => select.selectedOptions[0]?.text ?? "")
            .filter((words) => words && words !== "All");
        const fold = document.createElement("details");
        const summary = document.createElement("summary");
        fold.className = "fold";
        summary.textContent = (chosen.slice(0, 3).join(", ") || "Everything") + ": change";
        form.before(fold);
        fold.append(summary, form);
    }
}

// On a phone the rail scrolls: show where we are. A table that scrolls can be reached by keyboard.
document.querySelector(".rail [aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
for (const table of document.querySelectorAll("main table, main .scroll")) {
    if (table.scrollWidth > table.clientWidth && !table.hasAttribute("tabindex")) {
        table.tabIndex = 0;
    }
}
