/**
 * True prevalence behind an apparent one, with a cited set of test performance that the reader chooses. It counts by
 * {@link org.dentary.prevalence.PrevalenceService} and computes with {@code statistics}; which tests the counted animals had
 * it reads from their findings. Start reading at {@link org.dentary.prevalence.truth.TruthService}.
 */
package org.dentary.prevalence.truth;
