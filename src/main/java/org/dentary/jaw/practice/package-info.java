/**
 * Practice in reading jaws: a reference panel of known, agreed and drawn jaws, blinded rounds from it, and their scores.
 *
 * <p>It decides nothing about an animal. Whether a score is asked for is the plan's; {@link
 * org.dentary.jaw.JawReadingService} looks it up when a reading comes in.
 *
 * <p>Start reading at {@link org.dentary.jaw.practice.PracticeService}; the panel is {@link
 * org.dentary.jaw.practice.ReferencePanelService}'s, its drawn jaws are in {@code drawn-jaws.csv}.
 */
package org.dentary.jaw.practice;
