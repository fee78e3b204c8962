package org.dentary.result.stub;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * What a hunter reads. A detection is not told by a page before a person has told it: until then the page asks for a
 * call, in the same words as where the laboratory could not come to a result. How often one may try: common practice, no
 * source.
 */
final class StubRules {
    static final int TRIES_PER_ADDRESS = 10;
    static final int TRIES_PER_CODE = 6;
    static final Duration WINDOW = Duration.ofMinutes(30);
    static final Duration KEPT = Duration.ofDays(1);

    private StubRules() {}

    /** How the page shows an outcome: its own code, or {@code CALL}. */
    static String shown(String outcome, boolean contactSucceeded) {
        return switch (outcome) {
            case "INCONCLUSIVE" -> "CALL";
            case "DETECTED" -> contactSucceeded ? "DETECTED" : "CALL";
            default -> outcome;
        };
    }

    /** The address as it is counted: one household's whole IPv6 prefix (/64) is one address. */
    static String address(String host) {
        try {
            InetAddress address = InetAddress.getByName(host);
            return address instanceof Inet6Address
                    ? HexFormat.of().formatHex(Arrays.copyOf(address.getAddress(), 8))
                    : address.getHostAddress();
        } catch (UnknownHostException e) {
            return host;
        }
    }
}
