package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.BoxQueries.BoxRow;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.Sha256;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Boxes: opened under their label, filled, nested, moved with all that is in them. */
@ApplicationScoped
public class BoxService {
    private static final String RESOURCE = "box";

    private final BoxQueries boxes;
    private final CustodyQueries queries;
    private final Acts acts;
    private final ChainWriter chains;
    private final RepeatableRequests requests;

    BoxService(BoxQueries boxes, CustodyQueries queries, Acts acts, ChainWriter chains, RepeatableRequests requests) {
        this.boxes = boxes;
        this.queries = queries;
        this.acts = acts;
        this.chains = chains;
        this.requests = requests;
    }

    /**
     * Opens a box with the present account as custodian; with If-Match, moves it and all that is in it.
     *
     * @throws InvalidInput if the label is not a box's
     * @throws RuleBroken (409) if the account does not hold the box it moves
     */
    @Transactional
    public Stored<BoxView> put(String typed, PutBox command, String ifMatch) {
        CustodyQueries.LabelRow label = boxLabel(typed);
        String code = label.code();
        Integer version = boxes.find(code).map(BoxRow::version).orElse(null);
        Seen seen = requests.compare(RESOURCE, code, command, ifMatch, version);
        if (seen == Seen.REPLAY) {
            return new Stored<>(view(code), false);
        }
        Moment moment = acts.moment(
                command.occurredAt(),
                command.enteredAt(),
                command.reason(),
                command.place(),
                Acts.zone(List.of(label)));
        if (seen == Seen.NEW && boxes.insert(code, moment.place().shown(), moment.actor(), moment.receivedAt())) {
            Holder holder = Holder.person(moment.actor());
            chains.begin(List.of(Planned.moving(
                    moment.first(CustodyKind.LABEL_APPLIED, code),
                    holder,
                    new Head(
                            code,
                            0,
                            Sha256.NOTHING_BEFORE,
                            holder,
                            null,
                            moment.place().shown(),
                            null,
                            CustodyKind.LABEL_APPLIED.name(),
                            moment.occurredAt(),
                            moment.occurredAt()))));
        } else {
            move(code, moment);
        }
        requests.accept(RESOURCE, code, command);
        return new Stored<>(view(code), version == null);
    }

    private void move(String code, Moment moment) {
        Map<String, Head> heads = chains.lockWithContents(List.of(code));
        acts.requireHeld(heads.values(), acts.past(heads.values(), moment.occurredAt()));
        UUID act = UUID.randomUUID();
        chains.append(heads.values().stream()
                .map(head -> new Planned(
                        moment.draft(CustodyKind.MOVED, head).withHandOver(act),
                        head.at(moment.place().shown())))
                .toList());
        boxes.move(code, moment.place().shown());
    }

    /**
     * Puts a specimen or a box into a box; what is there already stays there.
     *
     * @return whether it was put in just now
     * @throws RuleBroken (409) if it would lie in itself, or the account does not hold both
     */
    @Transactional
    public Stored<BoxView> putIn(String typedBox, String typedCode, Packing packing) {
        String box = openBox(typedBox);
        CustodyQueries.LabelRow label = acts.label("content", typedCode);
        String code = label.code();
        if (box.equals(code)) {
            throw new RuleBroken("BOX_INTO_ITSELF", "Box " + box + " cannot be put into itself");
        }
        Map<String, Head> heads = lockBoth(box, code);
        Head head = heads.get(code);
        if (box.equals(head.box())) {
            return new Stored<>(view(box), false);
        }
        if (queries.around(box).contains(code)) {
            throw new RuleBroken(
                    "BOX_INTO_ITSELF", "Box " + box + " lies in " + code + " already; a box cannot lie in itself");
        }
        pack(CustodyKind.PACKED, box, head, heads, packing, label);
        return new Stored<>(view(box), true);
    }

    /**
     * Takes something out of a box; what is not in it stays where it is.
     *
     * @throws RuleBroken (409) if the account does not hold both
     */
    @Transactional
    public void takeOut(String typedBox, String typedCode, Packing packing) {
        String box = openBox(typedBox);
        CustodyQueries.LabelRow label = acts.label("content", typedCode);
        Map<String, Head> heads = lockBoth(box, label.code());
        Head head = heads.get(label.code());
        if (box.equals(head.box())) {
            pack(CustodyKind.UNPACKED, box, head, heads, packing, label);
        }
    }

    private Map<String, Head> lockBoth(String box, String code) {
        TreeSet<String> both = new TreeSet<>(List.of(box, code));
        Map<String, Head> heads = chains.lockWithContents(both);
        Map<String, String> in = heads.values().stream()
                .filter(head -> head.box() != null)
                .collect(Collectors.toMap(Head::code, Head::box));
        // Besides the two themselves only what lies in the code moves with it.
        heads.keySet().removeIf(one -> !both.contains(one) && !liesIn(one, code, in));
        return heads;
    }

    private static boolean liesIn(String code, String box, Map<String, String> in) {
        for (String around = in.get(code); around != null; around = in.get(around)) {
            if (around.equals(box)) {
                return true;
            }
        }
        return false;
    }

    private void pack(
            CustodyKind kind,
            String box,
            Head head,
            Map<String, Head> heads,
            Packing packing,
            CustodyQueries.LabelRow label) {
        Packing when = packing == null ? Packing.NOW : packing;
        Head boxHead = heads.get(box);
        Moment moment = acts.moment(
                when.occurredAt(), when.enteredAt(), when.reason(), boxHead.place(), Acts.zone(List.of(label)));
        Past past = acts.past(heads.values(), moment.occurredAt());
        Acts.requireNotOffered(heads.values());
        acts.requireHeld(heads.values(), past);
        if (!Objects.equals(past.holder(head), past.holder(boxHead))) {
            throw new RuleBroken(
                    "MIXED_CUSTODY",
                    head.code() + " is held by " + past.holder(head).code() + " and box " + box + " by "
                            + past.holder(boxHead).code() + "; hand over one of them first");
        }
        UUID act = UUID.randomUUID();
        String in = kind == CustodyKind.PACKED ? box : null;
        chains.append(heads.values().stream()
                .filter(one -> !one.code().equals(box))
                .map(one -> {
                    EventDraft draft = moment.draft(kind, one).withHandOver(act).with("box", box);
                    Head next = one.code().equals(head.code()) ? one.in(in) : one;
                    return new Planned(draft, next.at(boxHead.place()));
                })
                .toList());
    }

    /** The box as it stands, with all that is in it. */
    public BoxView view(String typed) {
        String code = openBox(typed);
        BoxRow row = boxes.find(code).orElseThrow();
        List<CustodyQueries.InsideRow> inside = queries.inside(List.of(code));
        Head head = queries.head(code).orElseThrow();
        Map<String, CustodyQueries.LabelRow> labels = queries.labels(
                inside.stream().map(CustodyQueries.InsideRow::code).toList());
        List<BoxView.Item> contents = inside.stream()
                .map(one -> new BoxView.Item(one.code(), labels.get(one.code()).part(), one.box(), one.depth()))
                .toList();
        String custodian = head.holder().code();
        return new BoxView(
                code,
                row.state(),
                head.place(),
                custodian,
                head.holder().kind(),
                queries.names(List.of(custodian)).getOrDefault(custodian, custodian),
                row.tamperSeal(),
                head.box(),
                row.openedBy(),
                row.openedAt(),
                head.offered() != null,
                (int) contents.stream().filter(one -> !one.part().equals("BOX")).count(),
                contents,
                row.version());
    }

    private CustodyQueries.LabelRow boxLabel(String typed) {
        CustodyQueries.LabelRow label = acts.existingLabel(typed);
        if (!label.isBox()) {
            throw InvalidInput.field(
                    "code", "NOT_A_BOX", label.code() + " is a label of part " + label.part() + ", not of a box");
        }
        return label;
    }

    private String openBox(String typed) {
        String code = boxLabel(typed).code();
        if (boxes.find(code).isEmpty()) {
            throw new NotFound("BOX_UNKNOWN", "Box " + code + " was not opened yet; say where it is first");
        }
        return code;
    }
}
