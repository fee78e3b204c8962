package org.dentary.portal.problem;

import java.util.List;

/**
 * The problems of one room.
 *
 * @param room the room by its package
 * @param title what people call it
 * @param problems never empty
 */
public record ProblemGroup(String room, String title, List<Explanation> problems) {}
