package org.dentary.platform.state;

/**
 * One allowed change of state, a line of {@code states.csv}.
 *
 * @param thing such as {@code submission}
 * @param from state before, UPPER_SNAKE
 * @param event what happens, in words of one
 * @param to state after
 * @param act permission that the route needs
 * @param route method and path below {@code /api/v1}
 */
public record Transition(String thing, String from, String event, String to, String act, String route) {}
