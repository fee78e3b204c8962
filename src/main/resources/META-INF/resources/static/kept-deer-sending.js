// Sends what waits on this device, one deer after another; what was sent is wiped from it.
import {all, find, put, remove} from "./kept-deer.js";

const PATIENCE_MILLISECONDS = 30_000;
const UNDERSTOOD = 500;

/**
 * Sends the account's own deer, in one window at a time. A deer that is refused stays with the reasons and waits to be
 * mended; without an answer the rest wait.
 *
 * @param account whose deer
 * @param tell called with {deer, answer} for each that was taken in, {deer, problems} for each refused
 * @returns {"done"|"no-signal"|"sign-in"}
 */
export function send(account, tell) {
    return navigator.locks.request("dentary-kept-deer", async () => {
        for (const {kit} of (await all()).filter(deer => deer.account === account && !deer.problems)) {
            const deer = await find(kit);
            if (!deer || deer.problems) {
                continue;
            }
            let response;
            let answer;
            try {
                response = await fetch(`/intake/without-signal/${kit}`, {
                    method: "POST",
                    body: new URLSearchParams({...deer.fields, account, enteredAt: deer.keptAt}),
                    redirect: "manual",
                    signal: AbortSignal.timeout(PATIENCE_MILLISECONDS),
                });
                answer = response.status && response.status < UNDERSTOOD ? await response.json() : null;
            } catch {
                return "no-signal";
            }
            if (response.type === "opaqueredirect" || response.status === 401) {
                return "sign-in";
            }
            if (response.ok) {
                await remove(kit);
                tell({deer, answer});
            } else if (answer) {
                await put({...deer, problems: answer.problems});
                tell({deer, problems: answer.problems});
            } else {
                return "no-signal";
            }
        }
        return "done";
    });
}
