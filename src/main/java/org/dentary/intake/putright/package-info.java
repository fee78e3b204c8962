/**
 * Putting an animal right after its intake: the age that stands, and which kits are one animal. Each says why and is a new
 * row beside the old; what came under the wrong label is {@code intake.mixup}'s and {@code specimen}'s to put right. Start
 * reading at {@link org.dentary.intake.putright.PutRightService}.
 */
package org.dentary.intake.putright;
