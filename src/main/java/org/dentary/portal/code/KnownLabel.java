package org.dentary.portal.code;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.dentary.kit.ReprintView;

/**
 * A label as a look-up answers it: what is known of it, and each time it was printed again.
 *
 * @param label what is known of it, its fields beside {@code reprints}
 * @param reprints oldest first, each with its reason
 */
public record KnownLabel(@JsonUnwrapped CodeView label, List<ReprintView> reprints) {}
