// What a label's ten characters say by themselves: whether they are a code, and which kit and part it was printed for.
// The same rules as the service's (ISO 7064 pure system, modulus 29, radix 2); only the service knows what a label is bound to.
const ALPHABET = "0123456789ACDFGHJKMNPQRTVWXYZ";
const KIT = 8;
const WHOLE = 10;
/** What is forgiven: control characters and spaces, then a scanner's symbology identifier (]C0), hyphens and dashes. */
const INVISIBLE = /[\s\p{C}]/gu;
const IDENTIFIER = /^\][A-Za-z][0-9A-Za-z]/;
const DASHES = /[\u002d\u2010-\u2014\u2212_]/g;

/**
 * The code that was typed or scanned.
 *
 * @returns {{code: string, kit: string, part: string}} part is the ninth character
 * @throws {Error} saying what is wrong with it
 */
export function labelCode(typed) {
    const text = typed.replace(INVISIBLE, "").replace(IDENTIFIER, "").replace(DASHES, "").toUpperCase().replaceAll("O", "0").replaceAll("I", "1");
    const foreign = [...text].findIndex(character => !ALPHABET.includes(character));
    if (!text) {
        throw new Error("Nothing was scanned or typed. A code has 10 characters.");
    }
    if (foreign >= 0) {
        throw new Error(`Character ${foreign + 1} is ${text[foreign]}, which no code holds. Look at it again.`);
    }
    if (text.length !== WHOLE) {
        throw new Error(`It has ${text.length} characters, a code has 10. Scan or type it again.`);
    }
    const sum = [...text].reduce((sum, character) => (sum * 2 + ALPHABET.indexOf(character)) % ALPHABET.length, 0);
    if (sum !== 1 || /\d/.test(text[0])) {
        throw new Error("The check character does not fit: one or more characters are wrong. Scan it, or compare all ten.");
    }
    return {code: text, kit: text.slice(0, KIT), part: text[KIT]};
}

/** A kit as it is printed, 4-4. */
export const asKit = kit => `${kit.slice(0, 4)}-${kit.slice(4)}`;
