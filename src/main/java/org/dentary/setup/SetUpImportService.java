package org.dentary.setup;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.runtime.TransactionConfiguration;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.result.outcome.OutcomeService;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Looks a set-up file through and posts it, whole or not at all, in one transaction. */
@ApplicationScoped
public class SetUpImportService {
    private static final String RESOURCE = "set-up import";
    /** Other rules judge every animal of every season anew. */
    private static final int LONGEST_SECONDS = 1800;
    /** NIST SP 800-63B, 5.1.1.2: at least eight characters of the user's choice. */
    private static final int SHORTEST_PASSWORD = 8;

    private final SetUpImportRepository imports;
    private final SetUpQueries queries;
    private final SetUpWrites writes;
    private final OutcomeService outcomes;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final Clock clock;
    private final boolean demo;

    SetUpImportService(
            SetUpImportRepository imports,
            SetUpQueries queries,
            SetUpWrites writes,
            OutcomeService outcomes,
            RepeatableRequests requests,
            CurrentAccount current,
            ObjectMapper json,
            Clock clock,
            @ConfigProperty(name = "dentary.demo", defaultValue = "false") boolean demo) {
        this.imports = imports;
        this.queries = queries;
        this.writes = writes;
        this.outcomes = outcomes;
        this.requests = requests;
        this.current = current;
        this.json = json;
        this.clock = clock;
        this.demo = demo;
    }

    /** What a preview answers: the file as it stands and whether it is new. */
    public record Previewed(SetUpImportView view, boolean isNew) {}

    /** What a repeat is told by; only its keyed digest is kept. */
    private record Request(String list, String content) {}

    /**
     * Looks a file through without changing any list. The same file under the same id again answers the same.
     *
     * @param list name of the list
     * @param bytes the file: CSV, or GeoJSON for boundaries
     * @param ifMatch ETag of the earlier file under this id when another replaces it, or null
     */
    @Transactional
    public Previewed preview(UUID id, String list, byte[] bytes, String ifMatch) {
        SetUpList to = SetUpList.of(list);
        RawTable raw = SetUpFile.read(to, bytes);
        SetUpImport there = imports.findById(id);
        Request request = new Request(list, write(raw));
        RepeatableRequests.Seen seen =
                requests.compare(RESOURCE, id.toString(), request, ifMatch, there == null ? null : there.version());
        if (seen == RepeatableRequests.Seen.REPLAY && there != null) {
            return new Previewed(view(there), false);
        }
        if (there != null && there.isPosted()) {
            throw new RuleBroken("ALREADY_POSTED", "This file was posted; send the next one under an id of its own");
        }
        SetUpImport fresh = there == null ? new SetUpImport(id) : there;
        RawTable kept = to == SetUpList.ACCOUNTS ? hashed(raw) : raw;
        fresh.look(to, write(kept), kept.lines().size(), actor(), clock.instant());
        if (there == null) {
            imports.persist(fresh);
        }
        requests.accept(RESOURCE, id.toString(), request);
        imports.flush();
        return new Previewed(view(fresh), there == null);
    }

    /** The file as it stands, its problems as of now. */
    @Transactional
    public SetUpImportView find(UUID id) {
        return view(load(id));
    }

    /**
     * Posts what was previewed, checked again against what is there now; posting it again changes nothing.
     *
     * @throws RuleBroken (409) if there are problems; nothing is written then
     */
    @Transactional
    @TransactionConfiguration(timeout = LONGEST_SECONDS)
    public SetUpImportView post(UUID id) {
        SetUpImport there = load(id);
        if (there.isPosted()) {
            return view(there);
        }
        SetUpList list = there.list();
        Known known = queries.known(list);
        SetUpRules.Checked checked = SetUpRules.check(list, read(there.content()), known);
        if (!checked.problems().isEmpty()) {
            throw new RuleBroken(
                    "IMPORT_HAS_PROBLEMS",
                    "Nothing was written: the file has " + checked.problems().size()
                            + " problem(s); mend them and send the file again",
                    checked.problems().stream()
                            .map(p -> new FieldProblem("line " + p.line() + ": " + p.field(), p.rule(), p.message()))
                            .toList());
        }
        SetUpRules.Effect effect = SetUpRules.effect(list, checked.rows(), known);
        writes.write(list, checked.rows(), SetUpRules.positions(list, checked.rows(), known), actor(), clock.instant());
        judgeAnew(list, JudgingRows.of(list, checked.rows(), known));
        there.post(actor(), clock.instant(), effect);
        imports.flush();
        return there.view(new SetUpRules.Checked(List.of(), List.of(), checked.warnings()), effect);
    }

    private void judgeAnew(SetUpList list, List<SetUpRules.Row> judging) {
        if (judging.isEmpty()) {
            return;
        }
        if (list == SetUpList.METHODS) {
            outcomes.deriveTestedBy(
                    judging.stream().map(row -> row.cell("code")).toList());
        } else {
            outcomes.deriveByRulesInForce();
        }
    }

    /** The rows of a list as its file has them, in set-up order. */
    public List<Map<String, String>> rows(SetUpList list) {
        return queries.present(list);
    }

    /** How many rows each list has. */
    public Map<SetUpList, Integer> counts() {
        return queries.counts();
    }

    private SetUpImport load(UUID id) {
        SetUpImport found = imports.findById(id);
        if (found == null) {
            throw new NotFound("IMPORT_UNKNOWN", "No set-up file was sent under " + id);
        }
        return found;
    }

    private SetUpImportView view(SetUpImport file) {
        if (file.isPosted()) {
            return file.view(new SetUpRules.Checked(List.of(), List.of(), List.of()), null);
        }
        Known known = queries.known(file.list());
        SetUpRules.Checked checked = SetUpRules.check(file.list(), read(file.content()), known);
        return file.view(checked, SetUpRules.effect(file.list(), checked.rows(), known));
    }

    private RawTable hashed(RawTable raw) {
        int column = raw.header().indexOf("password");
        List<RawTable.Line> lines = raw.lines().stream()
                .map(line -> {
                    List<String> cells = new ArrayList<>(line.cells());
                    if (column >= 0
                            && column < cells.size()
                            && !cells.get(column).isEmpty()) {
                        String password = cells.get(column);
                        boolean longEnough = demo || password.length() >= SHORTEST_PASSWORD;
                        cells.set(column, longEnough ? AccountService.passwordHash(password) : "too short");
                    }
                    return new RawTable.Line(line.number(), cells);
                })
                .toList();
        return new RawTable(raw.header(), lines);
    }

    private String actor() {
        return current.find().map(account -> account.actor()).orElse("service");
    }

    private String write(RawTable table) {
        try {
            return json.writeValueAsString(table);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("texts always make JSON", e);
        }
    }

    private RawTable read(String content) {
        try {
            return json.readValue(content, RawTable.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the stored file is the JSON that was written", e);
        }
    }
}
