package org.dentary.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** Opens and closes accounts and sessions. */
@ApplicationScoped
public class AccountService {
    /** How long a session lasts: one long working day. */
    public static final Duration SESSION = Duration.ofHours(14);

    private final AccountRepository accounts;
    private final SessionRepository sessions;
    private final AccountQueries queries;
    private final Passwords passwords;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    AccountService(
            AccountRepository accounts,
            SessionRepository sessions,
            AccountQueries queries,
            Passwords passwords,
            Clock clock) {
        this.accounts = accounts;
        this.sessions = sessions;
        this.queries = queries;
        this.passwords = passwords;
        this.clock = clock;
    }

    /**
     * Makes or changes an account.
     *
     * @param password plain text, or null to leave the present one; a new account needs one
     */
    @Transactional
    public void put(String username, String person, Role role, List<String> stations, String password) {
        AccountEntity account = accounts.findById(username);
        if (account == null) {
            account = new AccountEntity(username);
            account.become(person, role, stations.toArray(String[]::new));
            account.setPassword(Passwords.hash(password));
            accounts.persist(account);
        } else {
            account.become(person, role, stations.toArray(String[]::new));
            if (password != null) {
                account.setPassword(Passwords.hash(password));
            }
        }
        accounts.flush();
    }

    /** The account of that name if it is active. */
    public Optional<Account> find(String username) {
        return queries.byName(username).map(AccountRow::toAccount);
    }

    /** All active accounts by name. */
    public List<Account> all() {
        return queries.all().stream().map(AccountRow::toAccount).toList();
    }

    /**
     * Signs in.
     *
     * @return the token to present, 43 characters of base64url; empty if name or password is wrong
     */
    @Transactional
    public Optional<String> signIn(String username, String password) {
        return check(username, password.toCharArray()).map(account -> {
            byte[] bytes = new byte[32];
            random.nextBytes(bytes);
            String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
            sessions.persist(new SessionEntity(
                    hash(token), username, clock.instant(), clock.instant().plus(SESSION)));
            return token;
        });
    }

    /** Whether that is the account's own password: who types it at the moment of an act signs the act with it. */
    public boolean isPasswordOf(Account account, String password) {
        return check(account.username(), password.toCharArray()).isPresent();
    }

    /** Ends the session of that token; ending an ended or unknown one changes nothing. */
    @Transactional
    public void signOut(String token) {
        SessionEntity session = sessions.findById(hash(token));
        if (session != null) {
            session.end(clock.instant());
        }
    }

    /** The hash to store for a password, for accounts that are written many at a time. */
    public static String passwordHash(String password) {
        return Passwords.hash(password);
    }

    Optional<Account> check(String username, char[] password) {
        Optional<AccountRow> row = queries.byName(username);
        // An unknown name costs a hash too, so that answering time does not tell which names exist.
        String hash = row.map(AccountRow::passwordHash).orElse(NOBODY);
        boolean matches = passwords.matches(username, password, hash);
        return matches ? row.map(AccountRow::toAccount) : Optional.empty();
    }

    Optional<Account> byToken(String token) {
        return queries.byToken(hash(token), clock.instant()).map(AccountRow::toAccount);
    }

    private static final String NOBODY = Passwords.hash("nobody signs in with this");

    private static String hash(String token) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is required of every Java platform", e);
        }
    }
}
