package org.dentary.kit.print;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.Hazard;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.kit.LabelOfKit;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LabelPrintsResourceTest {
    @Inject
    KitFixture kits;

    @Inject
    EntityManager entities;

    @Inject
    CautionService cautions;

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
        // The first label lies 4.75 mm from the left, and 24 dots of it, 2.03 mm, are white.
        as("coordinator")
                .get(path + "?offsetX=-7.5")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("offsetX"))
                .body("detail", containsString("moves 0.72 millimeters of the print off the page"));
        as("coordinator")
                .get(path + "?stock=VIAL_33X13&offsetY=3")
                .then()
                .statusCode(422)
                .body("detail", containsString("moves 2.00 millimeters"));
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
        assertTrue(new PdfTextExtractor(new PdfReader(pdf)).getTextFromPage(1).contains("Station 1"));
    }

    @Test
    void eachPartIsPrintedAsOftenAsAskedAndTheTrailKeepsWhatItTook() throws Exception {
        IssuedBlock block = kits.aBlock(2, Part.NODE_LEFT, Part.FORM, Part.STUB);
        String path = "/api/v1/kit-blocks/" + block.id();
        String asked = "?stock=LETTER_30&start=25&copies=NODE_LEFT:3,STUB:0";
        as("sampler")
                .get(path + "/printing-plan" + asked)
                .then()
                .statusCode(200)
                .body("parts.part", contains("NODE_LEFT", "FORM", "STUB"))
                .body("parts.copies", contains(3, 1, 0))
                .body("parts.labels", contains(6, 2, 0))
                .body("labels", equalTo(8))
                .body("sheets", equalTo(2))
                .body("nextLabel", equalTo(3));
        as("sampler").get(path + "/printings").then().statusCode(200).body("items", empty());
        byte[] pdf = as("sampler")
                .get(path + "/labels.pdf" + asked)
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        PdfReader read = new PdfReader(pdf);
        assertEquals(2, read.getNumberOfPages());
        String text = new PdfTextExtractor(read).getTextFromPage(1) + new PdfTextExtractor(read).getTextFromPage(2);
        for (LabelOfKit label : block.labels()) {
            int times = text.split(LabelCode.parse(label.code()).grouped(), -1).length - 1;
            assertEquals(Map.of("NODE_LEFT", 3, "FORM", 1, "STUB", 0).get(label.part()), times, label.part());
        }
        as("sampler").get(path + "/labels.pdf?reason=smeared").then().statusCode(200);
        String next = as("sampler")
                .get(path + "/printings?limit=1")
                .then()
                .body("items.reason", contains("smeared"))
                .body("items.copies", contains("NODE_LEFT:1 FORM:1 STUB:1"))
                .extract()
                .header("Link");
        as("sampler")
                .get(next.substring(next.indexOf("/api"), next.indexOf(">")))
                .then()
                .header("Link", nullValue())
                .body("items", hasSize(1))
                .body("items.copies", contains("NODE_LEFT:3 FORM:1 STUB:0"))
                .body("items.start", contains(25))
                .body("items.labels", contains(8))
                .body("items.sheets", contains(2))
                .body("items.printedBy", contains("T_SAMPLER"))
                .body("items.reason", contains(nullValue()));
        as("sampler")
                .get(path + "/printings.csv")
                .then()
                .statusCode(200)
                .body(containsString(",T_SAMPLER,LETTER_30,NODE_LEFT:3 FORM:1 STUB:0,25,8,2,\r\n"));
        as("sampler-two").get(path + "/printings").then().statusCode(403);
        as("sampler-two").get(path + "/printings.csv").then().statusCode(403);
    }

    @Test
    void copiesThatCannotBeAreToldWithWhatIsAllowed() {
        IssuedBlock block = kits.aBlock(1, Part.JAW, Part.FORM);
        String path = "/api/v1/kit-blocks/" + block.id() + "/labels.pdf?copies=";
        for (String wrong : List.of("JAW:11", "OBEX:1", "JAW", "jaw:1", "JAW:-1", "JAW:1,JAW:2", "JAW:1;FORM:1", ",")) {
            as("sampler")
                    .get(path + wrong)
                    .then()
                    .statusCode(422)
                    .body("errors.field", contains("copies"))
                    .body("detail", containsString("one of JAW, FORM and 0 to 10"));
        }
        as("sampler").get(path + "JAW:0,FORM:0").then().statusCode(409).body("code", equalTo("NOTHING_TO_PRINT"));
        as("sampler").get(path + "&reason=" + "x".repeat(2001)).then().statusCode(422);
        as("sampler")
                .get("/api/v1/kit-blocks/" + block.id() + "/printings")
                .then()
                .body("items", empty());
    }

    /** Where a label goes: common practice, no source. */
    @Test
    void aStockThatDoesNotLastWhereAPartGoesIsWarnedAbout() {
        IssuedBlock block = kits.aBlock(1, Part.NODE_LEFT, Part.FORM, Part.BOX);
        String path = "/api/v1/kit-blocks/" + block.id() + "/printing-plan";
        plan(path)
                .body("cautions", hasSize(1))
                .body("cautions[0]", containsString("Left node usually go into a freezer"));
        plan(path + "?copies=NODE_LEFT:0").body("cautions", empty());
        plan(path + "?stock=JAR_50X25").body("cautions", empty());
        plan(path + "?stock=VIAL_33X13")
                .body("cautions", hasSize(2))
                .body("cautions[0]", containsString("not made for form"))
                .body("cautions[1]", containsString("not made for dry bag"));
        plan(path + "?stock=BOX_100X50&copies=FORM:0")
                .body("cautions", hasSize(1))
                .body("cautions[0]", containsString("not made for formalin"));
    }

    private static ValidatableResponse plan(String path) {
        return as("sampler").get(path).then().statusCode(200);
    }

    @Test
    void theCoverSheetSaysWhatIsPrintedAndTheCautionsOfTheProgram() throws IOException {
        IssuedBlock block = kits.aBlock(12, Part.NODE_LEFT, Part.FORM);
        byte[] pdf = as("sampler")
                .get("/api/v1/kit-blocks/" + block.id() + "/cover.pdf?copies=NODE_LEFT:3&start=7")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        PdfReader read = new PdfReader(pdf);
        StringBuilder text = new StringBuilder();
        for (int page = 1; page <= read.getNumberOfPages(); page++) {
            text.append(new PdfTextExtractor(read).getTextFromPage(page)).append(' ');
        }
        String words = text.toString().replaceAll("\\s+", " ");
        assertTrue(words.contains("Labels: 48 (identical copies of each: Left node 3, Form 1)"), words);
        assertTrue(words.contains("2 sheets, from label 7 of the first"), words);
        assertTrue(words.contains("is not made for freezer or formalin"), words);
        String caution = cautions.at(Hazard.LABELING).get(0).text();
        assertTrue(words.contains(caution.substring(0, 30)), words);
    }

    @Test
    void aLabelVoidedSinceIsNotPrintedAgain() {
        LabelOfKit jaw = kits.aKit(Part.JAW).get(0);
        String path = "/api/v1/labels/" + jaw.code() + "/reprints/" + UUID.randomUUID();
        as("sampler")
                .body("{\"stock\": \"VIAL_33X13\", \"reason\": \"smeared\"}")
                .put(path)
                .then()
                .statusCode(201);
        byte[] pdf = as("sampler")
                .get(path + ".pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        assertEquals(1, pageCount(pdf));
        as("coordinator")
                .body("{\"reason\": \"torn\"}")
                .put("/api/v1/labels/" + jaw.code() + "/voiding")
                .then()
                .statusCode(201);
        as("sampler").get(path + ".pdf").then().statusCode(409).body("code", equalTo("LABEL_VOID"));
    }

    private static int pageCount(byte[] pdf) {
        try {
            return new PdfReader(pdf).getNumberOfPages();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static RequestSpecification as(String account) {
        return IntakeFixture.as(account).contentType("application/json");
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
