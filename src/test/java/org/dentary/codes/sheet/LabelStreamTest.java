package org.dentary.codes.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.dentary.codes.symbol.Scanner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A long run of labels takes the memory of a page and is on its way while it is still being made. */
class LabelStreamTest {

    private static final int LABELS = 3000 * 4;

    @TempDir
    Path folder;

    @Test
    void threeThousandKitsOfFourLabelsPrintInAHeapOfFewMegabytes() throws IOException, InterruptedException {
        for (String stock : List.of("LETTER_30", "JAR_50X25")) {
            Path pdf = folder.resolve(stock + ".pdf");
            Process print = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx24m",
                            "-XX:+ExitOnOutOfMemoryError",
                            "-cp",
                            System.getProperty("java.class.path"),
                            LabelStreamTest.class.getName(),
                            stock,
                            pdf.toString())
                    .inheritIO()
                    .start();
            assertEquals(0, print.waitFor(), stock);
            String pages = String.valueOf(
                    LABELS / LabelStocks.named(stock).orElseThrow().labelsOnAPage());
            List<String> about = Scanner.run(List.of("pdfinfo", pdf.toString()));
            assertTrue(about.stream().anyMatch(line -> line.matches("Pages:\\s+" + pages)), about.toString());
        }
    }

    @Test
    void pagesAreOnTheirWayBeforeTheLastLabelIsAskedFor() {
        AtomicLong written = new AtomicLong();
        AtomicLong atHalf = new AtomicLong();
        OutputStream counting = new OutputStream() {
            @Override
            public void write(int b) {
                written.incrementAndGet();
            }

            @Override
            public void write(byte[] bytes, int from, int length) {
                written.addAndGet(length);
            }
        };
        Iterator<LabelContent> labels = LabelFixture.labels(1200).iterator();
        Iterator<LabelContent> watched = IntStream.range(0, 1200)
                .mapToObj(i -> {
                    if (i == 600) {
                        atHalf.set(written.get());
                    }
                    return labels.next();
                })
                .iterator();
        LabelSheet.on(LabelStocks.named("LETTER_30").orElseThrow()).write(watched, LabelRun.PLAIN, counting);
        assertTrue(atHalf.get() > written.get() * 0.4, atHalf + " of " + written + " bytes at half");
    }

    @Test
    void severalRunsAtOnceDoNotMixTheirText() {
        List<String> titles =
                IntStream.range(0, 8).parallel().mapToObj(this::printedTitle).toList();
        for (int i = 0; i < titles.size(); i++) {
            assertTrue(titles.get(i).contains("Quiet station number " + i), titles.get(i));
        }
    }

    private String printedTitle(int number) {
        Path pdf = folder.resolve("run" + number + ".pdf");
        Iterator<LabelContent> labels = LabelFixture.labels(300).stream()
                .map(label -> LabelContent.of(label.code(), "Quiet station number " + number))
                .iterator();
        try (OutputStream out = Files.newOutputStream(pdf)) {
            LabelSheet.on(LabelStocks.named("A4_21").orElseThrow()).write(labels, LabelRun.PLAIN, out);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return String.join(" ", Scanner.run(List.of("pdftotext", pdf.toString(), "-")));
    }

    /** Prints the labels of 3,000 kits on a stock to a file, in a machine of its own with little memory. */
    public static void main(String[] args) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(Path.of(args[1])))) {
            LabelSheet.on(LabelStocks.named(args[0]).orElseThrow())
                    .write(LabelFixture.stream(new Random(3000)).limit(LABELS).iterator(), LabelRun.PLAIN, out);
        }
    }
}
