package org.dentary.setup;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.dentary.setup.list.SetUpList;

/** A coordinator's file between being looked through and being posted. */
@Entity
@Table(name = "set_up_import")
class SetUpImport {
    static final String PREVIEWED = "PREVIEWED";
    static final String POSTED = "POSTED";
    private static final String EMPTIED = "{\"header\":[],\"lines\":[]}";

    @Id
    private UUID id;

    private String list;
    private String content;
    private int rows;
    private String state;

    @Column(name = "uploaded_by")
    private String uploadedBy;

    @Column(name = "uploaded_at")
    private Instant uploadedAt;

    @Column(name = "posted_by")
    private String postedBy;

    @Column(name = "posted_at")
    private Instant postedAt;

    private Integer adds;
    private Integer changes;

    @Version
    private int version;

    protected SetUpImport() {}

    SetUpImport(UUID id) {
        this.id = id;
    }

    void look(SetUpList list, String content, int rows, String by, Instant at) {
        this.list = list.path();
        this.content = content;
        this.rows = rows;
        this.state = PREVIEWED;
        this.uploadedBy = by;
        this.uploadedAt = at;
    }

    /** What the file said now stands in the lists; its content, password hashes among it, goes. */
    void post(String by, Instant at, SetUpRules.Effect effect) {
        this.state = POSTED;
        this.postedBy = by;
        this.postedAt = at;
        this.adds = effect.adds();
        this.changes = effect.changes();
        this.content = EMPTIED;
    }

    boolean isPosted() {
        return state.equals(POSTED);
    }

    SetUpList list() {
        return SetUpList.of(list);
    }

    String content() {
        return content;
    }

    int version() {
        return version;
    }

    SetUpImportView view(SetUpRules.Checked checked, SetUpRules.Effect effect) {
        return new SetUpImportView(
                id,
                list,
                state,
                rows,
                isPosted() ? adds : effect.adds(),
                isPosted() ? changes : effect.changes(),
                checked.problems(),
                checked.warnings(),
                uploadedBy,
                uploadedAt,
                postedBy,
                postedAt,
                version);
    }
}
