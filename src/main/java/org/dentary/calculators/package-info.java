/**
 * The calculators: what the statistics room computes, as JSON for programs and as a page for anybody signed in, without data of their
 * own. The parts say what they ask and how they answer; this package reads the address, draws, and shows them all under one roof.
 *
 * <p>It holds no formula (those are in {@code org.dentary.statistics}) and reads nothing that is stored. Start reading at
 * {@link org.dentary.calculators.Calculator}.
 */
package org.dentary.calculators;
