// A button to copy what a read-only field holds. Without script the field can be selected and copied by hand.
for (const field of document.querySelectorAll("textarea[data-copy]")) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "Copy";
    button.addEventListener("click", async () => {
        field.select();
        try {
            await navigator.clipboard.writeText(field.value);
            button.textContent = "Copied";
        } catch {
            button.textContent = "Selected: copy it with the keyboard";
        }
    });
    field.after(button);
}
