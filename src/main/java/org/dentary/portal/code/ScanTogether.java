package org.dentary.portal.code;

import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;

/**
 * Compare labels after applying them.
 *
 * @param codes what was scanned, in order; 2 to 50
 */
public record ScanTogether(
        @NotEmpty(message = "is missing; scan at least two labels")
        @Size(max = 50, message = "is at most 50; compare one kit at a time")
        List<@NotNull(message = "is empty; scan it again") String> codes) {}
