package org.dentary.specimen;

import java.time.Instant;

/** How a specimen was kept from some moment on. */
public record PreservationView(String code, String preservation, Instant since, String byActor, String reason) {}
