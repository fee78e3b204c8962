/**
 * Animals and the line list: one kit's deer facts, other identifiers and links to the kit that counts, and for each
 * disease the one open line that reports read. It knows neither teeth nor tissue nor findings; the rooms to its right
 * tell it plain values. Start reading at {@link org.dentary.animal.AnimalService}, then {@link
 * org.dentary.animal.line.LineService}.
 */
package org.dentary.animal;
