package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Minting;
import org.dentary.codes.NotACode;
import org.dentary.codes.Part;
import org.dentary.kit.chain.BlockChain;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;

/** Issues blocks of kits and reads them back. A sampler sees and prints the blocks of stations they serve. */
@ApplicationScoped
public class BlockService {
    private static final String RESOURCE = "kit-block";

    private final KitQueries queries;
    private final KitWrites writes;
    private final BlockChain chain;
    private final RepeatableRequests requests;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount current;
    private final Snapshot snapshot;
    private final Clock clock;
    private final Minting minting = new Minting();

    BlockService(
            KitQueries queries,
            KitWrites writes,
            BlockChain chain,
            RepeatableRequests requests,
            PlanService plan,
            PeopleService people,
            CurrentAccount current,
            Snapshot snapshot,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.chain = chain;
        this.requests = requests;
        this.plan = plan;
        this.people = people;
        this.current = current;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /** What issuing answered: whether the block is new, and the block. */
    public record Issued(boolean created, BlockView block) {}

    /**
     * Issues a block; the same request again changes nothing. Kits are drawn at random and never given out twice.
     *
     * @throws InvalidInput where season, station, person or parts cannot be
     * @throws RuleBroken (409) where the block exists with other content: what is printed cannot be changed
     */
    @Transactional
    public Issued issue(UUID id, IssueBlock block, String ifMatch) {
        BlockRow there = queries.block(id).orElse(null);
        return switch (requests.compare(
                RESOURCE, id.toString(), block, ifMatch, there == null ? null : there.version())) {
            case REPLAY -> new Issued(false, there.view());
            case CHANGE ->
                throw new RuleBroken(
                        "BLOCK_FIXED",
                        "A block cannot be changed once its labels exist; issue another block, and hand back or void"
                                + " what is not wanted of this one");
            case NEW -> {
                check(block);
                draw(id, block);
                requests.accept(RESOURCE, id.toString(), block);
                yield new Issued(true, queries.block(id).orElseThrow().view());
            }
        };
    }

    /**
     * A block.
     *
     * @throws NotFound where there is none
     * @throws NotAllowed where it was issued to a station that this sampler does not serve
     */
    public BlockView block(UUID id) {
        BlockView block = queries.block(id)
                .map(BlockRow::view)
                .orElseThrow(() -> new NotFound("BLOCK_UNKNOWN", "No block " + id + " was issued"));
        requireServes(block.station());
        return block;
    }

    /** A block with its kits and labels. */
    public IssuedBlock contents(UUID id) {
        return IssuedBlock.of(block(id), queries.labelsOfBlock(id));
    }

    /**
     * The blocks that this account may see, newest first.
     *
     * @param season of this season alone, or null for all
     * @param before those after this block in the list, or null from the start
     * @param most at most so many
     */
    public List<BlockView> blocks(String season, UUID before, int most) {
        return queries.blocks(season, seen(), before, most).stream()
                .map(BlockRow::view)
                .toList();
    }

    /** The stations whose blocks this account may see; empty for every station's. */
    public Optional<List<String>> seen() {
        Account account = current.get();
        return account.role() != Role.SAMPLER || account.serves("*")
                ? Optional.empty()
                : Optional.of(account.stations());
    }

    /** The block that a label was issued in, whoever may see it. */
    public BlockView ofLabel(String code) {
        return queries.blockOfLabel(code).map(BlockRow::view).orElseThrow();
    }

    /** Streams the labels of a block in printing order. */
    public void labels(UUID id, Consumer<LabelOfKit> each) {
        snapshot.stream(() -> queries.labelsOf(id), each);
    }

    /** Told while what became of kits is kept: those of some kits that were used after all. */
    @FunctionalInterface
    public interface UsedKits {
        Collection<String> among(Collection<String> kits);
    }

    /**
     * Says what became of kits that were not used.
     *
     * @param used names those that were used, which no other word fits
     * @throws InvalidInput where one is no code, not of this block or used, naming each
     */
    @Transactional
    public void account(UUID id, AccountForKits account, UsedKits used) {
        block(id);
        Set<String> stems = new LinkedHashSet<>();
        List<FieldProblem> faults = new ArrayList<>();
        for (String typed : account.kits()) {
            try {
                stems.add(KitStem.parse(typed).value());
            } catch (NotACode fault) {
                faults.add(new FieldProblem("kits", "NOT_A_CODE", fault.getMessage()));
            }
        }
        List<String> ofBlock = queries.homes(stems).stream()
                .filter(home -> home.block().equals(id.toString()))
                .map(KitQueries.KitHome::kit)
                .toList();
        stems.stream()
                .filter(kit -> !ofBlock.contains(kit))
                .forEach(kit -> faults.add(new FieldProblem(
                        "kits",
                        "NOT_OF_BLOCK",
                        "Kit " + new KitStem(kit).grouped() + " is not of this block; take it out")));
        used.among(ofBlock)
                .forEach(kit -> faults.add(new FieldProblem(
                        "kits",
                        "KIT_USED",
                        "Kit " + new KitStem(kit).grouped()
                                + " is used, something is recorded under it; take it out, and"
                                + " look whether it lies with the right ones")));
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        writes.fates(
                stems, account.fate().name(), account.reason(), current.get().actor(), clock.instant());
    }

    /** Refuses a sampler who does not serve the station. */
    void requireServes(String station) {
        Account account = current.get();
        if (account.role() == Role.SAMPLER && !account.serves(station)) {
            throw new NotAllowed(
                    "OTHER_STATION",
                    "These kits were issued to station " + station
                            + ", which this account does not serve; ask the coordinator");
        }
    }

    private void draw(UUID id, IssueBlock block) {
        writes.block(id, block, current.get().actor(), clock.instant());
        List<String> kits = writes.kits(id, block.kits(), minting);
        Part[] parts = block.parts().toArray(Part[]::new);
        List<LabelCode> labels = kits.stream()
                .flatMap(kit -> new KitStem(kit).labels(parts).stream())
                .toList();
        writes.labels(labels);
        chain.issued(new BlockChain.Issue(
                id,
                block.season(),
                block.station(),
                plan.station(block.station()).timeZone(),
                block.person(),
                block.parts(),
                block.kits(),
                block.copiesOrOne(),
                labels));
    }

    private void check(IssueBlock block) {
        List<FieldProblem> faults = new ArrayList<>(KitRules.partsOnce(block.parts()));
        SeasonView season = plan.seasons().stream()
                .filter(s -> s.code().equals(block.season()))
                .findFirst()
                .orElse(null);
        if (season == null) {
            faults.add(new FieldProblem(
                    "season", "SEASON_UNKNOWN", "No season '" + block.season() + "' is set up; choose one that is"));
        } else if (season.state().equals("CLOSED")) {
            faults.add(new FieldProblem(
                    "season", "SEASON_CLOSED", season.name() + " is closed; issue the kits for a season to come"));
        }
        if (plan.stations().stream().noneMatch(s -> s.code().equals(block.station()))) {
            faults.add(new FieldProblem(
                    "station",
                    "STATION_UNKNOWN",
                    "No station '" + block.station() + "' is set up; choose one that is"));
        }
        if (block.person() != null
                && people.persons().stream().noneMatch(p -> p.code().equals(block.person()))) {
            faults.add(new FieldProblem(
                    "person",
                    "PERSON_UNKNOWN",
                    "No person '" + block.person() + "' is on the roster; choose one or leave it out"));
        }
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
    }
}
