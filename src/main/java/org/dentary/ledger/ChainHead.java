package org.dentary.ledger;

/**
 * Where a chain ends: the next event takes the following position and names this hash as its predecessor.
 *
 * @param chain the chain's code
 * @param sequence position of its last event, from 1; 0 for a chain without events
 * @param hash that event's hash, or 64 zeros
 */
public record ChainHead(String chain, int sequence, String hash) {

    /** @throws IllegalArgumentException if the hash is no digest, or an empty chain has one */
    public ChainHead {
        if (sequence < 0 || !Sha256.isHex(hash) || (sequence == 0) != Sha256.NOTHING_BEFORE.equals(hash)) {
            throw new IllegalArgumentException("no head of chain " + chain + ": position " + sequence + ", " + hash);
        }
    }

    /** The head of a chain that has no event yet. */
    public static ChainHead empty(String chain) {
        return new ChainHead(chain, 0, Sha256.NOTHING_BEFORE);
    }

    /** The head after an event. */
    public static ChainHead after(LedgerEvent event) {
        return new ChainHead(event.chain(), event.sequence(), event.hash());
    }
}
