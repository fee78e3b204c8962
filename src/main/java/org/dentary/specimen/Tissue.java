package org.dentary.specimen;

/** What was taken. */
public enum Tissue {
    MEDIAL_RETROPHARYNGEAL_NODE("Medial retropharyngeal node"),
    LATERAL_RETROPHARYNGEAL_NODE("Lateral retropharyngeal node"),
    PAROTID_NODE("Parotid node"),
    SUBMANDIBULAR_NODE("Submandibular node"),
    OBEX("Obex"),
    TONSIL("Tonsil"),
    RECTAL_MUCOSA("Rectal mucosa"),
    EAR("Ear"),
    INCISOR("Incisor"),
    SPLEEN("Spleen"),
    LUNG("Lung"),
    BLOOD("Blood"),
    WHOLE_HEAD("Whole head"),
    OTHER("Other");

    private final String words;

    Tissue(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
