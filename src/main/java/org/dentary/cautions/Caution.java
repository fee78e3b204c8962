package org.dentary.cautions;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;

/** One version of one caution; its text is written by set-up files, its review by a person. */
@Entity
@Table(name = "caution")
@IdClass(Caution.Key.class)
class Caution {
    @Id
    private String code;

    @Id
    private String version;

    @Column(name = "reviewed_by")
    private String reviewedBy;

    @Column(name = "reviewed_on")
    private LocalDate reviewedOn;

    @Column(name = "review_by")
    private LocalDate reviewBy;

    protected Caution() {}

    void review(String by, LocalDate on, LocalDate again) {
        this.reviewedBy = by;
        this.reviewedOn = on;
        this.reviewBy = again;
    }

    /** Which caution, which version. */
    record Key(String code, String version) implements Serializable {}
}
