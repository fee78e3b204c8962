package org.dentary.result;

/**
 * Why tissue could not be read, or why it was not tested. Only reasons about tissue enter a sampler's rate; the others
 * are administrative.
 */
public enum FindingReason {
    WRONG_TISSUE(true),
    NO_FOLLICLES(true),
    OBEX_LEVEL_ABSENT(true),
    AUTOLYSED(true),
    INSUFFICIENT(true),
    CONTAINER_BROKEN(true),
    LEAKED(true),
    CONTAMINATED(true),
    STORAGE_WRONG(true),
    EXPIRED_AGE(true),
    MULTI_ANIMAL(true),
    UNLABELLED(false),
    ID_MISMATCH(false),
    MISSING_COLLECTION_DATE(false),
    NO_PAPERWORK(false),
    OUT_OF_SCOPE_AGE(false),
    NOT_RECEIVED(false),
    DUPLICATE(false),
    OTHER(false);

    private final boolean ofTissue;

    FindingReason(boolean ofTissue) {
        this.ofTissue = ofTissue;
    }

    /** Whether it is about the tissue. */
    public boolean isOfTissue() {
        return ofTissue;
    }
}
