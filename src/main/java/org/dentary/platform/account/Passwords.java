package org.dentary.platform.account;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Checks passwords against bcrypt hashes. A match is remembered for five minutes under a keyed digest of name, password
 * and hash, so a program that sends Basic with each request does not pay about 85 ms every time; a changed hash never
 * finds the old entry.
 */
@ApplicationScoped
class Passwords {
    private static final Duration REMEMBERED = Duration.ofMinutes(5);
    private static final int MOST_REMEMBERED = 10_000;

    private final Clock clock;
    private final byte[] key = new byte[32];
    private final Map<String, Instant> matched = new ConcurrentHashMap<>();

    Passwords(Clock clock) {
        this.clock = clock;
        new SecureRandom().nextBytes(key);
    }

    static String hash(String password) {
        return BcryptUtil.bcryptHash(password, 10);
    }

    boolean matches(String username, char[] password, String hash) {
        String text = new String(password);
        String digest = digest(username + '\0' + text + '\0' + hash);
        Instant now = clock.instant();
        Instant until = matched.get(digest);
        if (until != null && until.isAfter(now)) {
            return true;
        }
        if (!BcryptUtil.matches(text, hash)) {
            return false;
        }
        if (matched.size() >= MOST_REMEMBERED) {
            matched.values().removeIf(end -> !end.isAfter(now));
        }
        if (matched.size() < MOST_REMEMBERED) {
            matched.put(digest, now.plus(REMEMBERED));
        }
        return true;
    }

    private String digest(String text) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(key, "HmacSHA256"));
            return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("HmacSHA256 is required of every Java platform", e);
        }
    }
}
