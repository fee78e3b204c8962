package org.dentary.kit;

/**
 * One label of a block.
 *
 * @param kit the kit it was printed for
 * @param part name of the part
 * @param code ten characters
 */
public record LabelOfKit(String kit, String part, String code) {}
