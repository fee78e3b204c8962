package org.dentary.codes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Reads symbols off images with programs that are not ours: zbarimg (Code 128, QR) and dmtxread (Data Matrix). */
final class Scanner {

    private Scanner() {}

    /** The texts of the symbols of one symbology in an image, in the order the program found them. */
    static List<String> read(Symbology symbology, Path image) {
        return switch (symbology) {
            case CODE_128 -> zbar(image, "code128");
            case QR -> zbar(image, "qrcode");
            case DATA_MATRIX -> run(List.of("dmtxread", "--newline", image.toString()));
        };
    }

    private static List<String> zbar(Path image, String kind) {
        return run(List.of(
                "zbarimg", "-q", "--raw", "-S*.disable", "-S" + kind + ".enable", "--nodbus", image.toString()));
    }

    /** The lines a program writes; its exit status is not asked, for both say "nothing found" by it. */
    static List<String> run(List<String> command) {
        try {
            Process process = new ProcessBuilder(new ArrayList<>(command))
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            process.waitFor();
            return Stream.of(out.split("\n")).filter(line -> !line.isBlank()).toList();
        } catch (IOException fault) {
            throw new UncheckedIOException(command.get(0) + " is needed by this test", fault);
        } catch (InterruptedException fault) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(fault);
        }
    }
}
