package org.dentary.setup.demo;

import java.time.LocalDate;

/**
 * One invented deer and the truth about it.
 *
 * @param number its place in the draw, from 0
 * @param kit its place among the kits of its season and station, from 0
 * @param infected whether it truly is; the service never sees this
 * @param finding the screening laboratory's word, or null where no tissue was taken or nothing is reported yet
 * @param jaw {@code AT_INTAKE}, {@code LATER}, {@code NEVER} or {@code BLIND_TWICE}
 */
public record Deer(
        int number,
        String season,
        String station,
        int kit,
        String unit,
        LocalDate diedOn,
        String sex,
        String sexEvidence,
        String ageClass,
        String source,
        String route,
        String signs,
        String basis,
        boolean tissue,
        boolean infected,
        String finding,
        String jaw) {}
