package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
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
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.chain = chain;
        this.requests = requests;
        this.plan = plan;
        this.people = people;
        this.current = current;
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

    /** The blocks that this account may see, newest first. */
    public List<BlockView> blocks() {
        Account account = current.get();
        return queries.blocks().stream()
                .map(BlockRow::view)
                .filter(block -> account.role() != Role.SAMPLER || account.serves(block.station()))
                .toList();
    }

    /** The labels of a block that are to be printed, voided ones left out. */
    public List<LabelOfKit> labelsToPrint(UUID id) {
        block(id);
        return queries.labelsToPrint(id);
    }

    /** Keeps that a block was printed: on what, by whom, and why where it is not the first time. */
    @Transactional
    public void printed(UUID id, String stock, String reason) {
        writes.printed(id, stock, reason, current.get().actor(), clock.instant());
    }

    /**
     * Says what became of kits that were not used.
     *
     * @param kits kits or labels of them, as typed
     * @throws InvalidInput where one is no code or not of this block, naming each
     */
    @Transactional
    public void account(UUID id, Collection<String> kits, KitFate fate, String reason) {
        block(id);
        Set<String> stems = new LinkedHashSet<>();
        List<FieldProblem> faults = new ArrayList<>();
        for (String typed : kits) {
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
                .forEach(kit -> faults.add(
                        new FieldProblem("kits", "NOT_OF_BLOCK", "Kit " + kit + " is not of this block; take it out")));
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        writes.fates(stems, fate.name(), reason, current.get().actor(), clock.instant());
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
        List<String> kits = new ArrayList<>();
        while (kits.size() < block.kits()) {
            kits.addAll(writes.kits(id, minting.mint(block.kits() - kits.size()), kits.size()));
        }
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
