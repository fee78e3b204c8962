package org.dentary.result.release;

import java.time.Instant;

/** A detection that was released: from here on everybody who reads outcomes sees it. */
public record ReleaseView(
        String kit, String disease, String outcome, String reason, String releasedBy, Instant releasedAt) {}
