package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.dentary.kit.KitService;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.specimen.CutPiece;
import org.dentary.specimen.SpecimenService;
import org.dentary.specimen.SpecimenView;
import org.dentary.specimen.SpecimensRecorded;

/** Cuts pieces from specimens, such as half of a node into formalin; whoever holds the specimen holds the piece. */
@ApplicationScoped
public class PieceService {
    private final KitService kits;
    private final SpecimenService specimens;
    private final CustodyService custody;
    private final PeopleService people;
    private final Event<SpecimensRecorded> recorded;
    private final CurrentAccount current;

    PieceService(
            KitService kits,
            SpecimenService specimens,
            CustodyService custody,
            PeopleService people,
            Event<SpecimensRecorded> recorded,
            CurrentAccount current) {
        this.kits = kits;
        this.specimens = specimens;
        this.custody = custody;
        this.people = people;
        this.recorded = recorded;
        this.current = current;
    }

    /**
     * What a cut recorded.
     *
     * @param code label of the piece
     * @param isNew false for what was sent before
     * @param warnings what is allowed and worth a second look
     */
    public record Cut(String kit, String code, boolean isNew, List<String> warnings) {}

    /**
     * Records a piece under a label of the specimen's kit and begins its custody.
     *
     * @throws org.dentary.platform.problem.NotFound if either label is unknown, or the first holds no specimen
     * @throws RuleBroken if both are the same label, the second is another kit's or void, or holds other tissue
     * @throws org.dentary.platform.problem.InvalidInput naming every field at fault
     */
    @Transactional
    public Cut cut(String typedParent, String typedCode, CutPiece given) {
        people.requireAcknowledged(current.get());
        // While a piece is cut its specimen is not put to another animal, or the two would part.
        kits.hold(List.of(typedParent, typedCode));
        SpecimenView parent = specimens.specimen(typedParent);
        String code = kits.label(typedCode).code();
        if (code.equals(parent.code())) {
            throw new RuleBroken("OWN_PIECE", "A specimen is no piece of itself; scan the label of the piece");
        }
        boolean isNew = !specimens.exists(code);
        SpecimenService.Recorded tissue = specimens.recordPiece(parent, code, given);
        custody.collected(tissue.added().stream()
                .map(piece -> new Collected(
                        piece.code(),
                        piece.collectedAt().toInstant(),
                        Optional.ofNullable(piece.enteredAt())
                                .map(OffsetDateTime::toInstant)
                                .orElse(null),
                        piece.place(),
                        piece.condition().name(),
                        parent.code()))
                .toList());
        if (isNew) {
            recorded.fire(new SpecimensRecorded(List.of(parent.kit()), "PIECE"));
        }
        return new Cut(parent.kit(), code, isNew, tissue.warnings());
    }
}
