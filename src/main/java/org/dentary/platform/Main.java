package org.dentary.platform;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.QuarkusApplication;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import org.dentary.platform.database.DatabaseStart;

/** Starts the database, then the service; any fault that an operator can mend ends in one line and exit code 1. */
@QuarkusMain
public final class Main {
    private Main() {}

    public static void main(String... arguments) {
        try {
            Settings settings = Settings.of(System.getenv(), arguments);
            checkPort(settings);
            DatabaseStart.start(settings).forEach(System::setProperty);
            System.setProperty("quarkus.http.host", settings.host());
            System.setProperty("quarkus.http.port", Integer.toString(settings.port()));
            settings.proxy().ifPresent(Main::believe);
            settings.labelStocks().ifPresent(file -> System.setProperty("dentary.label-stocks", file.toString()));
            System.setProperty("dentary.data", settings.data().toString());
            System.setProperty("dentary.demo", Boolean.toString(settings.demo()));
        } catch (StartupFault fault) {
            System.err.println("dentary: " + fault.getMessage());
            System.exit(1);
        }
        Quarkus.run(Service.class, (code, fault) -> {
            if (fault != null) {
                System.err.println("dentary: cannot start: " + innermost(fault));
            }
            System.exit(fault == null ? code : 1);
        });
    }

    /** What the proxy says of scheme, host and caller holds; from any other address it is not read. */
    private static void believe(String proxy) {
        System.setProperty("quarkus.http.proxy.proxy-address-forwarding", "true");
        System.setProperty("quarkus.http.proxy.enable-forwarded-host", "true");
        System.setProperty("quarkus.http.proxy.trusted-proxies", proxy);
    }

    private static void checkPort(Settings settings) {
        try (ServerSocket socket = new ServerSocket()) {
            socket.setReuseAddress(true);
            socket.bind(new InetSocketAddress(InetAddress.getByName(settings.host()), settings.port()));
        } catch (IOException e) {
            throw new StartupFault("Port " + settings.port() + " on " + settings.host() + " is taken (" + e.getMessage()
                    + "); stop what uses it or set DENTARY_PORT to a free one");
        }
    }

    private static String innermost(Throwable fault) {
        Throwable cause = fault;
        while (cause.getCause() != null && cause.getCause() != cause) {
            cause = cause.getCause();
        }
        return String.valueOf(cause.getMessage()).lines().findFirst().orElse("no reason given");
    }

    /** Waits until the process is told to stop. */
    public static final class Service implements QuarkusApplication {
        @Override
        public int run(String... arguments) {
            Quarkus.waitForExit();
            return 0;
        }
    }
}
