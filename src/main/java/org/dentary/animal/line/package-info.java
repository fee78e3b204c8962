/**
 * The line of an animal for a disease: the narrow row that reports read, revised when what it depends on changes. It decides
 * no age and no outcome; those who do call it with plain values. Start reading at {@link
 * org.dentary.animal.line.LineService}.
 */
package org.dentary.animal.line;
