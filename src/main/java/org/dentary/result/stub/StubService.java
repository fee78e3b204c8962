package org.dentary.result.stub;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.dentary.codes.LabelCode;
import org.dentary.platform.DataFolder;

/** Answers a stub and a second fact with what is released, and nothing to anything else. */
@ApplicationScoped
public class StubService {
    private static final String HMAC = "HmacSHA256";

    private final StubQueries queries;
    private final Clock clock;
    private final byte[] key;

    StubService(StubQueries queries, Clock clock, DataFolder files) {
        this.queries = queries;
        this.clock = clock;
        this.key = files.key("stub-index");
    }

    /** What is told for one disease; {@code shown} is the released outcome or {@code CALL}. */
    public record Told(String disease, String species, String shown) {}

    /**
     * An answer.
     *
     * @param tooOften nothing was looked up: this address or this code was tried too often
     * @param told empty where code and fact do not fit together, whichever is wrong
     */
    public record Answer(boolean tooOften, List<Told> told) {}

    /**
     * Looks a stub up. Every try counts, right or wrong, and a code that was never issued counts like one that was.
     *
     * @param diedOn the day of death, or null where the station is given instead
     * @param station its code, or empty where the day is given
     */
    @Transactional
    Answer look(LabelCode code, LocalDate diedOn, String station, String host) {
        Instant now = clock.instant();
        String address = digest("address " + StubRules.address(host));
        String of = digest("code " + code.value());
        StubQueries.Tries tries = queries.tries(address, of, now.minus(StubRules.WINDOW));
        if (tries.byAddress() >= StubRules.TRIES_PER_ADDRESS || tries.ofCode() >= StubRules.TRIES_PER_CODE) {
            return new Answer(true, List.of());
        }
        queries.note(address, of, now, now.minus(StubRules.KEPT));
        return new Answer(
                false,
                queries.find(code.value(), diedOn, station).stream()
                        .map(row ->
                                new Told(row.disease(), row.species(), StubRules.shown(row.outcome(), row.reached())))
                        .toList());
    }

    private String digest(String text) {
        try {
            Mac mac = Mac.getInstance(HMAC);
            mac.init(new SecretKeySpec(key, HMAC));
            return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(HMAC + " is required of every Java platform", e);
        }
    }
}
