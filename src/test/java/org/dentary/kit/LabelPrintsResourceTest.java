package org.dentary.kit;

import static org.dentary.kit.KitBlocksResourceTest.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LabelPrintsResourceTest {
    @Inject
    KitFixture kits;

    @Inject
    EntityManager entities;

    @Test
    void aBlocksSheetIsReadBackByAnotherProgramCodeByCode() throws Exception {
        IssuedBlock block = kits.aBlock(5, Part.JAW, Part.NODE_LEFT, Part.NODE_RIGHT, Part.STUB);
        byte[] pdf = as("sampler")
                .get("/api/v1/kit-blocks/" + block.id() + "/labels.pdf?stock=LETTER_30")
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .extract()
                .asByteArray();
        Set<String> codes = block.labels().stream().map(LabelOfKit::code).collect(Collectors.toSet());
        assertEquals(codes, readByZbar(pdf), "Code 128 of every label, by zbarimg at 300 dpi");
        String text = new PdfTextExtractor(new PdfReader(pdf)).getTextFromPage(1);
        codes.forEach(code -> assertTrue(text.contains(LabelCode.parse(code).grouped()), text));
        assertEquals(
                1L,
                entities.createNativeQuery(
                                "select count(*) from label_print where block = :block and printed_by = 'T_SAMPLER'")
                        .setParameter("block", block.id())
                        .getSingleResult());
    }

    @Test
    void aPartUsedSheetAFaultyStartAndAnUnknownStockAreEachTold() throws IOException {
        IssuedBlock block = kits.aBlock(1, Part.JAW, Part.STUB);
        String path = "/api/v1/kit-blocks/" + block.id() + "/labels.pdf";
        byte[] pdf = as("coordinator")
                .get(path + "?start=30")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        assertEquals(
                2, new PdfReader(pdf).getNumberOfPages(), "the first label fills the sheet, the second begins one");
        as("coordinator")
                .get(path + "?start=31")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("start"))
                .body("detail", containsString("1 to 30"));
        as("coordinator")
                .get(path + "?stock=NONE")
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo("STOCK_UNKNOWN"));
        as("coordinator").get(path + "?offsetX=11").then().statusCode(422).body("errors[0].field", equalTo("offsetX"));
        as("sampler-two").get(path).then().statusCode(403).body("code", equalTo("OTHER_STATION"));
        as("liaison").get(path).then().statusCode(403);
    }

    @Test
    void coverCalibrationAndStocksAreThere() {
        IssuedBlock block = kits.aBlock(1, Part.JAW);
        as("sampler")
                .get("/api/v1/kit-blocks/" + block.id() + "/cover.pdf")
                .then()
                .statusCode(200)
                .contentType("application/pdf");
        as("sampler")
                .get("/api/v1/label-stocks/JAR_50X25/calibration.pdf?offsetY=-0.5")
                .then()
                .statusCode(200)
                .contentType("application/pdf");
        as("auditor")
                .get("/api/v1/label-stocks")
                .then()
                .statusCode(200)
                .body("items.code", hasItems("LETTER_30", "A4_21"));
    }

    @Test
    void aLabelPrintedAgainKeepsItsCodeAndTheTrailSaysWhy() throws Exception {
        LabelOfKit jaw = kits.aKit(Part.JAW).get(0);
        String path = "/api/v1/labels/" + jaw.code() + "/reprints/" + UUID.randomUUID();
        String body = "{\"stock\": \"LETTER_30\", \"reason\": \"smeared in the rain\"}";
        as("sampler").body(body).put(path).then().statusCode(201).body("printNumber", equalTo(2));
        as("sampler").body(body).put(path).then().statusCode(200).body("printNumber", equalTo(2));
        as("sampler").body(body.replace("rain", "snow")).put(path).then().statusCode(409);
        as("sampler").body("{\"stock\": \"LETTER_30\"}").put(path).then().statusCode(422);
        as("sampler").body(body.replace("LETTER_30", "NONE")).put(path).then().statusCode(422);
        as("sampler-two")
                .body(body)
                .put(path.substring(0, path.length() - 1) + "0")
                .then()
                .statusCode(403);
        byte[] pdf = as("sampler")
                .get(path + ".pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        assertEquals(Set.of(jaw.code()), readByZbar(pdf));
        assertTrue(new PdfTextExtractor(new PdfReader(pdf)).getTextFromPage(1).contains("Print 2"));
    }

    private static Set<String> readByZbar(byte[] pdf) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("labels");
        Files.write(folder.resolve("labels.pdf"), pdf);
        run("pdftoppm", "-png", "-r", "300", folder + "/labels.pdf", folder + "/page");
        Set<String> codes = new HashSet<>();
        try (var pages = Files.list(folder)) {
            for (Path page : pages.filter(p -> p.toString().endsWith(".png")).toList()) {
                codes.addAll(run("zbarimg", "-q", "--raw", "-Sdisable", "-Scode128.enable", page.toString()));
            }
        }
        return codes;
    }

    private static List<String> run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        List<String> lines =
                new String(process.getInputStream().readAllBytes()).lines().toList();
        process.waitFor();
        return lines;
    }
}
