/**
 * Taking an animal in: facts, jaw, tissue and the beginning of custody in one transaction, and what of these comes later.
 * It decides nothing that a room of the journey can decide; it brings them together. Start reading at {@link
 * org.dentary.intake.IntakeService}.
 */
package org.dentary.intake;
