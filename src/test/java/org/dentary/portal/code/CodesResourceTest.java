package org.dentary.portal.code;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.kit.KitService;
import org.dentary.kit.LabelOfKit;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CodesResourceTest {
    @Inject
    IntakeFixture intake;

    @Inject
    KitFixture kits;

    @Inject
    KitService service;

    @Test
    void aCodeTellsWhereItWasIssuedAndOnceUsedWhatItBelongsTo() {
        IntakeFixture.Deer deer = intake.aDeer();
        String stub = deer.label(Part.STUB);
        code(stub)
                .statusCode(200)
                .body("code", equalTo(stub))
                .body("kit", equalTo(deer.kit()))
                .body("part", equalTo("STUB"))
                .body("station", equalTo("T_STATION_1"))
                .body("boundTo", nullValue())
                .body("place", nullValue());
        intake.take(deer, intake.yearlingWithLeftNode(deer));
        code(stub.toLowerCase()).statusCode(200).body("boundTo", equalTo(deer.kit()));
    }

    @Test
    void aLookUpTellsEachPrintWithItsReasonWhatItsKitWasSaidToBeAndWhyItIsVoid() {
        IssuedBlock block = kits.aBlock(1, Part.JAW);
        String jaw = block.labels().get(0).code();
        code(jaw).body("prints", equalTo(1)).body("reprints", empty()).body("reported", nullValue());
        for (String reason : List.of("smeared", "frozen off")) {
            as("sampler")
                    .contentType("application/json")
                    .body("{\"stock\": \"JAR_50X25\", \"reason\": \"" + reason + "\"}")
                    .put("/api/v1/labels/" + jaw + "/reprints/" + UUID.randomUUID())
                    .then()
                    .statusCode(201);
        }
        as("coordinator")
                .contentType("application/json")
                .body("{\"kits\": [\"" + jaw + "\"], \"fate\": \"LOST\", \"reason\": \"blown away\"}")
                .put("/api/v1/kit-blocks/" + block.id() + "/unused-kits")
                .then()
                .statusCode(200);
        voiding(jaw, "torn").statusCode(201).body("voidReason", equalTo("torn"));
        code(jaw)
                .body("prints", equalTo(3))
                .body("reprints.printNumber", contains(2, 3))
                .body("reprints.reason", contains("smeared", "frozen off"))
                .body("reported", equalTo("LOST"))
                .body("voided", equalTo(true))
                .body("voidReason", equalTo("torn"));
        as("sampler")
                .accept("text/html")
                .get("/kits/labels/" + jaw)
                .then()
                .body(containsString("must not be used: torn"))
                .body(containsString("Reported lost"))
                .body(containsString("frozen off"));
    }

    @Test
    void aReboundLabelBelongsToTheOtherAnimalWhateverItsCharacters() {
        IntakeFixture.Deer deer = intake.aDeer();
        intake.take(deer, intake.facts());
        LabelOfKit stray = kits.aKit(Part.JAW).get(0);
        service.rebind(List.of(stray.code()), deer.kit());
        code(stray.code()).body("kit", equalTo(stray.kit())).body("boundTo", equalTo(deer.kit()));
    }

    @Test
    void aStringThatIsNoCodeIsRefusedNamingTheCharacterAndAStrangerIsNotFound() {
        code("A2C4B6H8JK")
                .statusCode(422)
                .body("errors[0].rule", equalTo("NOT_A_CODE"))
                .body("detail", containsString("character 5 is B"));
        code(new Minting().mint().label(Part.JAW).value()).statusCode(404).body("code", equalTo("LABEL_UNKNOWN"));
    }

    @Test
    void everySymbolIsReadBackAndASymbolOrModuleThatIsNoneIsTold() throws Exception {
        String code = kits.aKit(Part.JAW).get(0).code();
        String path = "/api/v1/codes/" + code;
        for (String symbol : List.of("code128", "datamatrix", "qr")) {
            byte[] png = as("auditor")
                    .get(path + ".png?module=5&symbol=" + symbol)
                    .then()
                    .statusCode(200)
                    .contentType("image/png")
                    .extract()
                    .asByteArray();
            assertEquals(code, read(png, symbol), symbol);
            as("auditor")
                    .get(path + ".svg?symbol=" + symbol)
                    .then()
                    .statusCode(200)
                    .contentType("image/svg+xml");
        }
        as("auditor").get(path + ".png?symbol=ean").then().statusCode(422).body("errors[0].field", equalTo("symbol"));
        as("auditor").get(path + ".png?module=38").then().statusCode(422).body("errors[0].field", equalTo("module"));
        as("auditor").get("/api/v1/codes/XYZ.svg").then().statusCode(422);
    }

    @Test
    void jarBagAndFormMustBeOneKit() {
        List<LabelOfKit> kit = kits.aKit(Part.NODE_LEFT, Part.FORM);
        LabelOfKit other = kits.aKit(Part.FORM).get(0);
        String jar = kit.get(0).code();
        String form = kit.get(1).code();
        scanBack(jar, jar, form).statusCode(200).body("kit", equalTo(kit.get(0).kit()));
        scanBack(jar, jar, other.code())
                .statusCode(409)
                .body("code", equalTo("NOT_ONE_KIT"))
                .body("errors.field", contains("codes[2]"));
        scanBack(jar).statusCode(422).body("code", equalTo("TOO_FEW"));
        scanBack(jar, "x").statusCode(422).body("errors.field", contains("codes[1]"));
        voiding(form, "torn").statusCode(201);
        scanBack(jar, form).statusCode(409).body("code", equalTo("LABEL_VOID"));
    }

    @Test
    void aFreeLabelIsVoidedOnceAndABoundOneNever() {
        IntakeFixture.Deer deer = intake.aDeer();
        String spare = deer.label(Part.SPARE_1);
        voiding(spare, "torn").statusCode(201).body("voided", equalTo(true)).header("ETag", "\"1\"");
        voiding(spare, "torn").statusCode(200).header("ETag", "\"1\"");
        voiding(spare, "lost").statusCode(409);
        voiding(deer.label(Part.JAW), " ").statusCode(422).body("errors[0].field", equalTo("reason"));
        intake.take(deer, intake.facts());
        voiding(deer.label(Part.STUB), "torn")
                .statusCode(409)
                .body("code", equalTo("LABEL_BOUND"))
                .body("detail", containsString(deer.kit()));
        as("sampler")
                .contentType("application/json")
                .body("{\"reason\": \"torn\"}")
                .put("/api/v1/labels/" + spare + "/voiding")
                .then()
                .statusCode(403);
    }

    private static ValidatableResponse code(String code) {
        return as("sampler").get("/api/v1/codes/" + code).then();
    }

    private static ValidatableResponse voiding(String code, String reason) {
        return as("coordinator")
                .contentType("application/json")
                .body("{\"reason\": \"" + reason + "\"}")
                .put("/api/v1/labels/" + code + "/voiding")
                .then();
    }

    private static ValidatableResponse scanBack(String... codes) {
        String list = Arrays.stream(codes).map(c -> "\"" + c + "\"").collect(Collectors.joining(","));
        return as("sampler")
                .contentType("application/json")
                .body("{\"codes\": [" + list + "]}")
                .post("/api/v1/codes/scan-back")
                .then();
    }

    /** As zbarimg reads it; Data Matrix, which it does not know, as dmtxread does. */
    private static String read(byte[] png, String symbol) throws Exception {
        Path file = Files.createTempFile("symbol", ".png");
        Files.write(file, png);
        List<String> command = symbol.equals("datamatrix")
                ? List.of("dmtxread", "-N1", "-m8000", file.toString())
                : List.of(
                        "zbarimg",
                        "-q",
                        "--raw",
                        "--nodbus",
                        "-S*.disable",
                        "-Scode128.enable",
                        "-Sqrcode.enable",
                        file.toString());
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String text = new String(process.getInputStream().readAllBytes());
        process.waitFor();
        return text.strip();
    }
}
