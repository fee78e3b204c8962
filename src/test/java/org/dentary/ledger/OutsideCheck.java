package org.dentary.ledger;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.tools.ToolProvider;

/** {@code deploy/VerifyCustody.java}, compiled for Java 17 and run apart from the service's classes. */
final class OutsideCheck {

    private static final Path SOURCE = Path.of("deploy/VerifyCustody.java");

    private final Class<?> verifier;

    /** Exit status and everything printed. */
    record Outcome(int status, String output) {}

    private OutsideCheck(Class<?> verifier) {
        this.verifier = verifier;
    }

    static OutsideCheck compiled() {
        try {
            Path classes = Files.createTempDirectory(Path.of("target"), "verify-custody");
            int status = ToolProvider.getSystemJavaCompiler()
                    .run(null, null, null, "--release", "17", "-Werror", "-d", classes.toString(), SOURCE.toString());
            if (status != 0) {
                throw new IllegalStateException(SOURCE + " does not compile");
            }
            URL[] alone = {classes.toUri().toURL()};
            return new OutsideCheck(new URLClassLoader(alone, null).loadClass("VerifyCustody"));
        } catch (IOException | ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    Outcome run(List<String> arguments) {
        ByteArrayOutputStream output = new ByteArrayOutputStream();
        try {
            int status = (int) verifier.getMethod("run", String[].class, PrintStream.class)
                    .invoke(
                            null,
                            arguments.toArray(new String[0]),
                            new PrintStream(output, true, StandardCharsets.UTF_8));
            return new Outcome(status, output.toString(StandardCharsets.UTF_8));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
