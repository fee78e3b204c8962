package org.dentary.kit.print;

import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.QueryParam;
import java.util.LinkedHashMap;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** How a block is to be printed, as typed in the address. */
public class PrintParameters {
    static final String FIRST_STOCK = "LETTER_30";

    @Parameter(description = "Code of the label stock, one of /api/v1/label-stocks", example = FIRST_STOCK)
    @QueryParam("stock")
    @DefaultValue(FIRST_STOCK)
    public String stock = FIRST_STOCK;

    @Parameter(description = "First label to use on the first sheet, from 1, counted along the rows", example = "1")
    @QueryParam("start")
    @DefaultValue("1")
    public String start = "1";

    @Parameter(description = "Millimeters that everything is moved to the right, -10 to 10", example = "0.5")
    @QueryParam("offsetX")
    @DefaultValue("0")
    public String offsetX = "0";

    @Parameter(description = "Millimeters that everything is moved down, -10 to 10", example = "-0.5")
    @QueryParam("offsetY")
    @DefaultValue("0")
    public String offsetY = "0";

    @Parameter(
            description =
                    "Identical labels of single parts, 0 to 10 each; 0 leaves a part out, a part that is not named"
                            + " gets the block's copies",
            example = "NODE_LEFT:3,FORM:0")
    @QueryParam("copies")
    public String copies;

    /** The same as names and values of an address, those alone that say something. */
    public Map<String, String> inAddress() {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("stock", stock);
        values.put("start", start);
        values.put("offsetX", offsetX);
        values.put("offsetY", offsetY);
        values.put("copies", copies);
        values.values().removeIf(value -> value == null || value.isBlank());
        return values;
    }
}
