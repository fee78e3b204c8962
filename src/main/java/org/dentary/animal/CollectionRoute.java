package org.dentary.animal;

/** How the animal or its head reached us. */
public enum CollectionRoute {
    STATION("Check station"),
    DROP_OFF("Drop-off"),
    PROCESSOR("Processor"),
    TAXIDERMIST("Taxidermist"),
    FIELD("Field"),
    OTHER("Other");

    private final String words;

    CollectionRoute(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
