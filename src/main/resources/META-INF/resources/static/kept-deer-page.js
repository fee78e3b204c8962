// Intake without a signal: keeps each deer on the device, and sends what waits as soon as there is a signal.
import {rightScan, wrongScan} from "./dentary.js";
import {all, find, put, remove} from "./kept-deer.js";
import {send} from "./kept-deer-sending.js";
import {asKit, labelCode} from "./label-code.js";

/** What one deer usually has in common with the next at the same table. */
const CARRIED = ["station", "managementUnit", "species", "mortalitySource", "collectionRoute", "samplingBasis", "diedOn",
    "preservation"];
const FORMULA = /^[=+\-@\t\r]/;

const $ = id => document.getElementById(id);
const form = $("kept-deer");
const account = form.dataset.account;
const parts = new Map([...$("parts").children].map(part => [part.dataset.character, part.textContent]));
let kit;

const words = (name, value) =>
    form.querySelector(`[name="${name}"][value="${value}"]`)?.closest("label")?.textContent.trim() ?? "";
const moment = instant => new Date(instant).toLocaleString("en-US", {dateStyle: "medium", timeStyle: "short"});
const labels = fields => (fields.specimens ?? "").split(/[\n,;]+/).filter(line => line.trim());

/** This minute on the clock of the station that is chosen. */
function now() {
    const timeZone = form.elements.station.selectedOptions[0]?.dataset.zone;
    return new Date().toLocaleString("sv-SE", {timeZone, dateStyle: "short", timeStyle: "short"}).replace(" ", "T");
}

function fields() {
    const typed = new Map(new FormData(form));
    if (form.elements.jawStatus.value !== "READ") {
        [...typed.keys()].filter(name => name.startsWith("jaw.")).forEach(name => typed.delete(name));
    }
    return Object.fromEntries([...typed].filter(([, value]) => value.trim()));
}

function fill(values) {
    for (const [name, value] of Object.entries(values)) {
        for (const field of form.querySelectorAll(`[name="${CSS.escape(name)}"]`)) {
            if (field.matches("[type=radio], [type=checkbox]")) {
                field.checked = field.value === value;
            } else {
                field.value = value;
            }
        }
    }
}

/** Opens the form of a kit: as it was kept, or new with what the deer before had in common. */
function open(of, values) {
    const carried = Object.fromEntries(CARRIED.map(name => [name, form.elements[name].value]));
    form.reset();
    fill({...carried, ...values});
    if (!values) {
        fill({at: now(), readingId: crypto.randomUUID()});
    }
    kit = of;
    $("kit-name").textContent = asKit(kit);
    $("scan-kit").hidden = true;
    form.hidden = false;
    form.querySelector("details.cues").open = form.elements.jawStatus.value === "READ";
    form.dispatchEvent(new Event("change"));
    stopForSigns();
    checkLabels();
    (form.querySelector("[name=sex]:checked") ?? form.querySelector("[name=sex]")).focus();
}

function scanNext() {
    kit = null;
    form.hidden = true;
    $("scan-kit").hidden = false;
    $("refusal").hidden = true;
    $("kit").value = "";
    $("kit").focus();
}

function refuse(problems) {
    $("refusal").hidden = !problems;
    $("refusal").textContent = (problems ?? []).map(problem => problem.message).join(" ");
}

$("scan-kit").addEventListener("submit", async event => {
    event.preventDefault();
    const error = $("kit-error");
    try {
        const code = labelCode($("kit").value);
        const before = await find(code.kit);
        if (before && before.account !== account) {
            throw new Error(`Kit ${asKit(code.kit)} is kept on this device by ${before.account}. Take another kit.`);
        }
        error.textContent = "";
        rightScan();
        open(code.kit, before?.fields);
        refuse(before && [{message: "This kit is kept already; what you change here replaces it."}, ...(before.problems ?? [])]);
    } catch (fault) {
        error.textContent = fault.message;
        wrongScan();
        $("kit").select();
    }
});

function stopForSigns() {
    const seen = form.elements.clinicalSigns.value === "SEEN";
    $("stop").hidden = !seen;
    form.elements.stopRead.disabled = !seen;
    if (seen && !form.elements.stopRead.checked) {
        $("stop").scrollIntoView({block: "start"});
    }
}
form.addEventListener("change", event => event.target.name === "clinicalSigns" && stopForSigns());

/** Labels of another kit that the sampler was told of: only the service knows what a label is bound to. */
let told;

/** Names what each scanned label says and what is wrong with it: with those that are no code, and with those of another kit. */
function checkLabels() {
    const said = [];
    const wrong = [];
    const others = [];
    for (const line of labels({specimens: form.elements.specimens.value})) {
        try {
            const label = labelCode(line);
            if (label.kit !== kit) {
                others.push(`${line.trim()} was printed for kit ${asKit(label.kit)}, not for ${asKit(kit)}.`);
            } else {
                said.push(parts.get(label.part) ?? "No part");
            }
        } catch (fault) {
            wrong.push(`${line.trim()}: ${fault.message}`);
        }
    }
    $("specimens-error").textContent = [...wrong, ...others,
        others.length ? "Compare jar, bag and form; if the label is right all the same, keep the deer once more." : ""].join(" ");
    $("specimens-hint").textContent = said.length ? `Scanned: ${said.join(", ")}.` : "One label a line; left and right node are told by their labels. Leave it empty if nothing was taken yet.";
    return {wrong: wrong.join(), others: others.join()};
}
form.elements.specimens.addEventListener("input", event => {
    const {wrong, others} = checkLabels();
    if (event.inputType === "insertLineBreak") {
        (wrong || others ? wrongScan : rightScan)();
    }
});

form.addEventListener("submit", async event => {
    event.preventDefault();
    const {wrong, others} = checkLabels();
    if (wrong || (others && others !== told)) {
        told = others;
        wrongScan();
        form.elements.specimens.focus();
        return;
    }
    try {
        await put({kit, account, keptAt: new Date().toISOString(), fields: fields()});
    } catch (fault) {
        refuse([{message: `This deer is NOT kept: the device says “${fault.message}”. Write it on the paper form.`}]);
        wrongScan();
        return;
    }
    rightScan();
    scanNext();
    await show();
    sendAll();
});
$("leave").addEventListener("click", scanNext);

function cell(row, content, name) {
    const cell = row.insertCell();
    cell.append(content);
    cell.className = name ?? "";
}

function button(text, name, act) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = text;
    button.setAttribute("aria-label", `${text} ${name}`);
    button.addEventListener("click", act);
    return button;
}

/** Shows what waits. */
async function show() {
    const waiting = await all();
    const refused = waiting.filter(deer => deer.problems).length;
    $("waiting-count").textContent = waiting.length
        ? `${waiting.length} deer ${waiting.length === 1 ? "waits" : "wait"} on this device`
            + (refused ? `; ${refused} to be mended` : "")
        : "Nothing waits on this device";
    $("send").hidden = !waiting.some(deer => deer.account === account && !deer.problems);
    $("kept-section").hidden = !waiting.length;
    const body = $("kept").tBodies[0];
    body.replaceChildren();
    for (const deer of waiting) {
        const row = body.insertRow();
        cell(row, asKit(deer.kit), "code");
        cell(row, deer.problems ? deer.problems.map(problem => problem.message).join(" ")
            : deer.account === account ? "Waits to be sent" : `Waits for ${deer.account} to sign in here`);
        const acts = document.createElement("span");
        acts.className = "actions";
        if (deer.account === account) {
            acts.append(button("Open", asKit(deer.kit), () => {
                open(deer.kit, deer.fields);
                refuse(deer.problems);
            }));
        }
        acts.append(button("Drop", asKit(deer.kit), async () => {
            if (confirm(`Drop kit ${asKit(deer.kit)}? It was not sent and cannot be brought back.`)) {
                await remove(deer.kit);
                show();
            }
        }));
        cell(row, acts);
        cell(row, words("sex", deer.fields.sex));
        cell(row, words("jawStatus", deer.fields.jawStatus));
        cell(row, String(labels(deer.fields).length), "num");
        cell(row, deer.account);
        cell(row, moment(deer.keptAt));
    }
}

function tellSent({deer, answer}) {
    if (answer) {
        const line = document.createElement("li");
        const link = document.createElement("a");
        link.href = `/animals/${answer.kit}`;
        link.className = "code";
        link.textContent = asKit(answer.kit);
        const count = answer.specimens === 1 ? "1 specimen" : `${answer.specimens} specimens`;
        line.append(link, ` ${[answer.age, count].filter(Boolean).join(", ")}. ${answer.notes.join(" ")}`);
        $("sent").append(line);
        $("sent-section").hidden = false;
    } else {
        wrongScan();
    }
    return show();
}

const SAID = {
    "done": "",
    "no-signal": "No signal: they wait here and are sent when it is back.",
    "sign-in": "You are signed out. ",
};

async function sendAll() {
    if ($("send").hidden) {
        return;
    }
    $("sending").textContent = "Sending…";
    const end = await send(account, tellSent);
    $("sending").textContent = SAID[end];
    if (end === "sign-in") {
        const link = document.createElement("a");
        link.href = "/sign-in?then=/intake/without-signal";
        link.textContent = "Sign in to send them";
        $("sending").append(link);
    }
    show();
}
$("send").addEventListener("click", sendAll);
addEventListener("online", sendAll);

$("save-file").addEventListener("click", async () => {
    const waiting = await all();
    const names = [...new Set(waiting.flatMap(deer => Object.keys(deer.fields)))];
    const quoted = value => `"${(FORMULA.test(value) ? `'${value}` : value).replaceAll('"', '""')}"`;
    const rows = [["kit", "account", "keptAt", ...names],
        ...waiting.map(deer => [deer.kit, deer.account, deer.keptAt, ...names.map(name => deer.fields[name] ?? "")])];
    const link = document.createElement("a");
    link.href = URL.createObjectURL(
        new Blob([rows.map(row => `${row.map(quoted).join(",")}\r\n`).join("")], {type: "text/csv"}));
    link.download = "kept-deer.csv";
    link.click();
    URL.revokeObjectURL(link.href);
});

try {
    if (!isSecureContext) {
        throw new Error("https is needed");
    }
    await show();
    $("kit").disabled = false;
    $("made-at").textContent = moment($("made-at").dateTime);
    navigator.storage?.persist?.();
    $("kit").focus();
    await sendAll();
} catch {
    $("cannot-keep").hidden = false;
    $("scan-kit").hidden = true;
}
