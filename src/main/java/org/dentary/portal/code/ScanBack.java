package org.dentary.portal.code;

import java.util.List;
import org.dentary.kit.LabelView;

/**
 * Labels that were scanned together and are one kit.
 *
 * @param kit the kit
 * @param labels in the order scanned
 */
public record ScanBack(String kit, List<LabelView> labels) {}
