// A field to sign in with finger, pen or mouse. Without script the name that is typed beside it is the signature.

for (const field of document.querySelectorAll("canvas.sign")) {
    const strokes = document.querySelector(`#${field.dataset.for}`);
    const clear = document.querySelector(`#${field.dataset.clear}`);
    const pen = field.getContext("2d");
    field.hidden = false;
    clear.hidden = false;
    pen.lineWidth = 4;
    pen.lineCap = "round";
    pen.lineJoin = "round";

    function at(event) {
        const box = field.getBoundingClientRect();
        const within = (value, most) => Math.max(0, Math.min(most, Math.round(value)));
        return [
            within(((event.clientX - box.left) / box.width) * field.width, field.width),
            within(((event.clientY - box.top) / box.height) * field.height, field.height),
        ];
    }

    function draw(command, [x, y]) {
        if (strokes.value.length > 19_900) {
            return;
        }
        strokes.value += `${command}${x} ${y}`;
        if (command === "M") {
            pen.strokeStyle = getComputedStyle(field).color;
            pen.beginPath();
            pen.moveTo(x, y);
        } else {
            pen.lineTo(x, y);
            pen.stroke();
        }
    }

    field.addEventListener("pointerdown", (event) => {
        field.setPointerCapture(event.pointerId);
        draw("M", at(event));
    });
    field.addEventListener("pointermove", (event) => {
        if (field.hasPointerCapture(event.pointerId)) {
            draw("L", at(event));
        }
    });
    clear.addEventListener("click", () => {
        strokes.value = "";
        pen.clearRect(0, 0, field.width, field.height);
    });
}
