package org.dentary.custody.box;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.custody.box.BoxQueries.BoxRow;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Planned;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Stored;
import org.dentary.kit.KitService;
import org.dentary.ledger.Sha256;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.state.States;

/** Boxes: opened under their label, filled, nested, moved with all that is in them. */
@ApplicationScoped
public class BoxService {
    private static final String RESOURCE = "box";

    private final BoxQueries boxes;
    private final CustodyQueries queries;
    private final Labels labels;
    private final KitService kits;
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final RepeatableRequests requests;

    BoxService(
            BoxQueries boxes,
            CustodyQueries queries,
            Labels labels,
            KitService kits,
            Moments moments,
            Rights rights,
            ChainWriter chains,
            RepeatableRequests requests) {
        this.boxes = boxes;
        this.queries = queries;
        this.labels = labels;
        this.kits = kits;
        this.moments = moments;
        this.rights = rights;
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
        kits.hold(List.of(typed));
        CustodyQueries.LabelRow label = boxLabel(typed, "code");
        String code = label.code();
        Integer version = boxes.find(code).map(BoxRow::version).orElse(null);
        Seen seen = requests.compare(RESOURCE, code, command, ifMatch, version);
        if (seen == Seen.REPLAY) {
            return new Stored<>(view(code), false);
        }
        Moment moment = moments.moment(
                command.occurredAt(),
                command.enteredAt(),
                command.reason(),
                command.place(),
                Labels.zone(List.of(label)));
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
        Past past = rights.past(heads.values(), moment.occurredAt());
        rights.requireHeld(heads.values(), past);
        UUID act = UUID.randomUUID();
        chains.append(heads.values().stream()
                .map(head -> new Planned(
                        moment.draft(CustodyKind.MOVED, head).withHandOver(act),
                        past.at(head, moment.place().shown())))
                .toList());
        boxes.move(code, past.isPast(heads.get(code)) ? null : moment.place().shown());
    }

    /**
     * Puts specimens and boxes into a box; what is there already stays there.
     *
     * @return whether anything was put in just now
     * @throws RuleBroken (409) if one would lie in itself, or the account does not hold all of them and the box
     */
    @Transactional
    public Stored<BoxView> putIn(String typedBox, List<String> typed, Packing packing) {
        String box = openBox(typedBox);
        List<CustodyQueries.LabelRow> labels = this.labels.labels("codes", typed);
        Load load = load(box, labels);
        requireState(box, "fill");
        List<String> codes =
                load.codes.stream().filter(code -> !box.equals(load.in(code))).toList();
        Set<String> around = new TreeSet<>(queries.around(List.of(box)));
        around.add(box);
        around.retainAll(codes);
        if (!around.isEmpty()) {
            throw new RuleBroken(
                    "BOX_INTO_ITSELF",
                    "Box " + box + " is or lies in " + String.join(", ", around) + "; a box cannot lie in itself");
        }
        if (codes.isEmpty()) {
            return new Stored<>(view(box), false);
        }
        pack(CustodyKind.PACKED, load, codes, packing, labels);
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
        List<CustodyQueries.LabelRow> labels = List.of(this.labels.label("content", typedCode));
        Load load = load(box, labels);
        requireState(box, "empty");
        List<String> codes =
                load.codes.stream().filter(code -> box.equals(load.in(code))).toList();
        if (!codes.isEmpty()) {
            pack(CustodyKind.UNPACKED, load, codes, packing, labels);
        }
    }

    /** A box and codes that go in or out, their chains locked with all that lies in them. */
    private record Load(String box, List<String> codes, Map<String, Head> heads) {
        String in(String code) {
            return heads.get(code).box();
        }

        /** The box and those codes, with what lies in the codes but not what else lies in the box. */
        Map<String, Head> touched(Set<String> moving) {
            Map<String, Head> touched = new TreeMap<>(heads);
            touched.keySet().removeIf(code -> !code.equals(box) && !moves(code, moving));
            return touched;
        }

        private boolean moves(String code, Set<String> moving) {
            for (String one = code; one != null; one = heads.containsKey(one) ? in(one) : null) {
                if (moving.contains(one)) {
                    return true;
                }
            }
            return false;
        }
    }

    private Load load(String box, List<CustodyQueries.LabelRow> labels) {
        List<String> codes = labels.stream().map(CustodyQueries.LabelRow::code).toList();
        TreeSet<String> all = new TreeSet<>(codes);
        all.add(box);
        return new Load(box, codes, chains.lockWithContents(all));
    }

    private void pack(
            CustodyKind kind, Load load, List<String> codes, Packing packing, List<CustodyQueries.LabelRow> labels) {
        Packing when = packing == null ? Packing.NOW : packing;
        Head box = load.heads.get(load.box);
        Set<String> moving = Set.copyOf(codes);
        Map<String, Head> heads = load.touched(moving);
        Moment moment =
                moments.moment(when.occurredAt(), when.enteredAt(), when.reason(), box.place(), Labels.zone(labels));
        Past past = rights.past(heads.values(), moment.occurredAt());
        Rights.requireNotOffered(heads.values());
        rights.requireHeld(heads.values(), past);
        List<String> others = codes.stream()
                .filter(code -> !past.holder(heads.get(code)).equals(past.holder(box)))
                .toList();
        if (!others.isEmpty()) {
            throw new RuleBroken(
                    "MIXED_CUSTODY",
                    Labels.shown(others) + " and box " + load.box
                            + " have different custodians; hand over one of them first");
        }
        UUID act = UUID.randomUUID();
        String in = kind == CustodyKind.PACKED ? load.box : null;
        chains.append(heads.values().stream()
                .filter(head -> !head.code().equals(load.box))
                .map(head -> new Planned(
                        moment.draft(kind, head).withHandOver(act).with("box", load.box),
                        moving.contains(head.code()) ? past.packed(head, in, box.place()) : past.at(head, box.place())))
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

    private void requireState(String box, String event) {
        States.require("box", box, boxes.find(box).orElseThrow().state(), event);
    }

    /**
     * Refuses what is no box that was opened.
     *
     * @param field of the request that names it
     * @throws InvalidInput at that field
     */
    public void requireOpened(String typed, String field) {
        String code = boxLabel(typed, field).code();
        if (boxes.find(code).isEmpty()) {
            throw InvalidInput.field(field, "BOX_UNKNOWN", notOpened(code));
        }
    }

    private CustodyQueries.LabelRow boxLabel(String typed, String field) {
        CustodyQueries.LabelRow label = labels.existingLabel(typed);
        if (!label.isBox()) {
            throw InvalidInput.field(
                    field, "NOT_A_BOX", label.code() + " is a label of part " + label.part() + ", not of a box");
        }
        return label;
    }

    private String openBox(String typed) {
        String code = boxLabel(typed, "code").code();
        if (boxes.find(code).isEmpty()) {
            throw new NotFound("BOX_UNKNOWN", notOpened(code));
        }
        return code;
    }

    private static String notOpened(String code) {
        return "Box " + code + " was not opened yet; say where it is first";
    }
}
