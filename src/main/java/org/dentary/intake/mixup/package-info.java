/**
 * Suspected mix-ups of labels and animals, gathered from what other rooms recorded: each opens both animals side by side,
 * where it is put right, or is set aside with a reason. Putting right is {@link org.dentary.intake.putright.PutRightPages}'.
 * Start reading at {@link org.dentary.intake.mixup.Sign}, then {@link org.dentary.intake.mixup.MixUpService}.
 */
package org.dentary.intake.mixup;
