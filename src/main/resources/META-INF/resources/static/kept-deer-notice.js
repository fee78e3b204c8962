// On every page of who may take deer in: says how many wait on this device.
import {all} from "./kept-deer.js";

const waiting = (await all()).length;
if (waiting && !document.getElementById("kept-deer")) {
    const line = document.createElement("p");
    const link = document.createElement("a");
    line.className = "caution";
    link.href = "/intake/without-signal";
    link.textContent = "See and send";
    line.append(`${waiting} deer ${waiting === 1 ? "waits" : "wait"} on this device and ${waiting === 1 ? "is" : "are"} not sent. `, link);
    document.getElementById("main").prepend(line);
}
