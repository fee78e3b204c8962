package org.dentary.result.imports.progress;

import java.time.Instant;

/**
 * How far an import is.
 *
 * @param act {@code PREVIEW} or {@code POSTING}
 * @param state {@code RUNNING}; {@code DONE}; {@code REFUSED}, with why; {@code STOPPED} where the service ended in the
 *     middle: nothing of it is stored, and it can be asked for again
 * @param step what it is at; null where it is not running
 * @param done lines or animals of the step behind
 * @param total lines or animals of the step
 * @param percent of the whole, 0 to 100
 * @param refusal why it was refused, or null
 */
public record ImportProgress(
        String act,
        String state,
        ImportStep step,
        int done,
        int total,
        int percent,
        String refusal,
        String fileName,
        Instant begunAt) {
    public boolean isRunning() {
        return state.equals("RUNNING");
    }

    /** As the page says it: what is being done, and how far. */
    public String words() {
        String at = step == null ? "waiting to begin" : step.words();
        return total == 0 ? at : at + ", " + done + " of " + total;
    }
}
