/**
 * The pictures of a season, each with its table, its figures in words and its file: age classes and sexes, progress to target, weeks, seasons side
 * by side, laboratory turnaround, and the map of management units. It counts what prevalence and chance of detection count
 * and draws it; it computes no statistic of its own. Start reading at
 * {@link org.dentary.prevalence.pictures.PictureService}.
 */
package org.dentary.prevalence.pictures;
