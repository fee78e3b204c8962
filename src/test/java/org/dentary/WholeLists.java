package org.dentary;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads lists to their end, so that pages and files can be held against each other. */
public final class WholeLists {
    private WholeLists() {}

    /** The kits of a list from its first page on, by the links (RFC 8288) from page to page. */
    public static List<String> byPages(String account, String first) {
        return items(account, first).stream()
                .map(item -> (String) item.get("kit"))
                .toList();
    }

    /** The same, each item whole. */
    public static List<Map<String, Object>> items(String account, String first) {
        List<Map<String, Object>> items = new ArrayList<>();
        String next = first;
        while (next != null) {
            Response page = as(account).urlEncodingEnabled(false).get(next);
            assertEquals(200, page.statusCode());
            items.addAll(page.jsonPath().getList("items"));
            String link = page.header("Link");
            next = link == null ? null : link.substring(1, link.indexOf('>'));
        }
        return items;
    }

    /** The first column of a CSV file without its head. */
    public static List<String> inTheFile(String account, String path) {
        return as(account)
                .accept("text/csv")
                .get(path)
                .then()
                .statusCode(200)
                .extract()
                .asString()
                .lines()
                .skip(1)
                .map(line -> line.substring(0, line.indexOf(',')))
                .toList();
    }
}
