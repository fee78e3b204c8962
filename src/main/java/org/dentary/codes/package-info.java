/**
 * The codes on the labels: their alphabet and check character, the symbols that scanners read, and the drawing of label
 * sheets. Nothing here knows of deer, of the database or of the web; which codes were issued, to whom, and what they are
 * bound to belongs to the packages that use this one. Start reading at {@link org.dentary.codes.LabelCode}.
 */
package org.dentary.codes;
