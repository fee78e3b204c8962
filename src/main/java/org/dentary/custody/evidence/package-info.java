/**
 * Photographs as evidence of custody events: kept once, named by their digest in every event that they show, and seen by
 * whoever may see one of those events. Start reading at {@link org.dentary.custody.evidence.EvidenceService}.
 */
package org.dentary.custody.evidence;
