package org.dentary.codes.symbol;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Reads symbols off images with programs that are not ours: zbarimg (Code 128, QR) and dmtxread (Data Matrix). */
public final class Scanner {

    private Scanner() {}

    /** The texts of the symbols of one symbology in some images, in the order of the images. */
    public static List<String> read(Symbology symbology, List<Path> images) {
        List<String> command = new ArrayList<>(
                switch (symbology) {
                    case CODE_128 -> zbar("code128");
                    case QR -> zbar("qrcode");
                    case DATA_MATRIX -> List.of("dmtxread", "--newline", "--stop-after=1", "--milliseconds=5000");
                });
        images.forEach(image -> command.add(image.toString()));
        return run(command);
    }

    private static List<String> zbar(String kind) {
        return List.of("zbarimg", "-q", "--raw", "-S*.disable", "-S" + kind + ".enable", "--nodbus");
    }

    /** The lines a program writes; its exit status is not asked, for both say "nothing found" by it. */
    public static List<String> run(List<String> command) {
        try {
            Process process = new ProcessBuilder(command)
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
