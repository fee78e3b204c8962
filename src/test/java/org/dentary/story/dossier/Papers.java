package org.dentary.story.dossier;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** PDFs read by programs that are not ours: words by pdftotext, pages by pdftoppm, symbols by zbarimg and dmtxread. */
public final class Papers {
    private Papers() {}

    public static String words(Path pdf) {
        return String.join("\n", run("pdftotext", "-layout", pdf.toString(), "-"));
    }

    /** The pages at a resolution as files, in order. */
    public static List<Path> pages(Path pdf, int dpi) throws IOException {
        Path folder = Files.createTempDirectory(pdf.getParent(), "pages");
        run(
                "pdftoppm",
                "-png",
                "-gray",
                "-r",
                String.valueOf(dpi),
                pdf.toString(),
                folder.resolve("page").toString());
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    public static List<String> bars(Path page) {
        return run("zbarimg", "-q", "--raw", "--nodbus", "-S*.disable", "-Scode128.enable", page.toString());
    }

    public static List<String> matrix(Path page) {
        return run("dmtxread", "--newline", "--stop-after=1", "--milliseconds=8000", page.toString());
    }

    public static int count(String words, String part) {
        return words.split(java.util.regex.Pattern.quote(part), -1).length - 1;
    }

    public static List<String> run(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            process.waitFor();
            return out.lines().filter(line -> !line.isBlank()).toList();
        } catch (IOException fault) {
            throw new UncheckedIOException(command[0] + " is needed by this test", fault);
        } catch (InterruptedException fault) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(fault);
        }
    }
}
