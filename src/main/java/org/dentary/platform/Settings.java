package org.dentary.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What the operator sets from outside, read once at start.
 *
 * @param data folder of the embedded database, keys and files; created if missing
 * @param port TCP port in [1, 65535]
 * @param host address to listen on; the demo listens on loopback only
 * @param proxy address of the proxy that speaks TLS in front, whose word on scheme, host and caller is believed; or empty
 * @param demo whether the invented season is loaded
 * @param labelStocks a file of label stocks beside those that come with the service, or empty
 * @param external the external database, or empty for the embedded one
 */
public record Settings(
        Path data,
        int port,
        String host,
        Optional<String> proxy,
        boolean demo,
        Optional<Path> labelStocks,
        Optional<External> external) {
    private static final Pattern ADDRESS = Pattern.compile("[0-9.]+|[0-9A-Fa-f.]*:[0-9A-Fa-f:.]*");

    /** Where an external PostgreSQL is and who migrates and who serves. */
    public record External(String url, String owner, String ownerPassword, String user, String userPassword) {}

    /**
     * Reads the settings.
     *
     * @throws StartupFault naming the variable, its value and what is allowed
     */
    public static Settings of(Map<String, String> environment, String... arguments) {
        boolean demo = false;
        for (String argument : arguments) {
            if (!argument.equals("--demo")) {
                throw new StartupFault("Unknown argument '" + argument + "'; allowed: --demo");
            }
            demo = true;
        }
        String host = environment.getOrDefault("DENTARY_HOST", "127.0.0.1");
        if (demo && !host.equals("127.0.0.1") && !host.equals("localhost") && !host.equals("::1")) {
            throw new StartupFault("DENTARY_HOST is '" + host
                    + "', but the demo has published passwords and listens on loopback only; unset DENTARY_HOST");
        }
        return new Settings(
                folder(environment.getOrDefault("DENTARY_DATA", "data")),
                port(environment.getOrDefault("DENTARY_PORT", "8080")),
                host,
                proxy(environment.get("DENTARY_PROXY")),
                demo,
                file(environment, "DENTARY_LABEL_STOCKS"),
                external(environment));
    }

    private static Path folder(String given) {
        Path data = Path.of(given).toAbsolutePath().normalize();
        try {
            Files.createDirectories(data);
            Path probe = Files.createTempFile(data, "probe", null);
            Files.delete(probe);
        } catch (IOException e) {
            throw new StartupFault("DENTARY_DATA is '" + given + "', which cannot be written (" + e + "); name a folder"
                    + " that this user may write to");
        }
        return data;
    }

    private static int port(String given) {
        try {
            int port = Integer.parseInt(given);
            if (port >= 1 && port <= 65535) {
                return port;
            }
        } catch (NumberFormatException e) {
            // told below, together with numbers out of range
        }
        throw new StartupFault("DENTARY_PORT is '" + given + "'; allowed: a whole number from 1 to 65535");
    }

    private static Optional<String> proxy(String given) {
        if (given == null || given.isBlank()) {
            return Optional.empty();
        }
        if (!ADDRESS.matcher(given).matches()) {
            throw new StartupFault("DENTARY_PROXY is '" + given
                    + "'; allowed: the address, such as 127.0.0.1, from which the proxy in front calls");
        }
        return Optional.of(given);
    }

    private static Optional<Path> file(Map<String, String> environment, String name) {
        String given = environment.get(name);
        if (given == null || given.isBlank()) {
            return Optional.empty();
        }
        Path file = Path.of(given).toAbsolutePath().normalize();
        if (!Files.isReadable(file) || Files.isDirectory(file)) {
            throw new StartupFault(
                    name + " is '" + given + "', which is no file that can be read; name one or unset it");
        }
        return Optional.of(file);
    }

    private static Optional<External> external(Map<String, String> environment) {
        String url = environment.get("DENTARY_DB_URL");
        if (url == null || url.isBlank()) {
            return Optional.empty();
        }
        if (!url.startsWith("jdbc:postgresql:")) {
            throw new StartupFault("DENTARY_DB_URL is '" + url + "'; allowed: jdbc:postgresql://host:port/database");
        }
        return Optional.of(new External(
                url,
                required(environment, "DENTARY_DB_OWNER"),
                environment.getOrDefault("DENTARY_DB_OWNER_PASSWORD", ""),
                required(environment, "DENTARY_DB_USER"),
                environment.getOrDefault("DENTARY_DB_USER_PASSWORD", "")));
    }

    private static String required(Map<String, String> environment, String name) {
        String value = environment.get(name);
        if (value == null || value.isBlank()) {
            throw new StartupFault(name + " is missing; with DENTARY_DB_URL set, name the database role here");
        }
        return value;
    }
}
