/**
 * The codes on the labels: their alphabet and check character, and how a typed one is read. The symbols that scanners read
 * are drawn in {@code symbol}, label sheets in {@code sheet}; nothing here knows of deer, of the database or of the web, and
 * which codes were issued, to whom, and what they are bound to belongs to the packages that use this one. Start reading at
 * {@link org.dentary.codes.LabelCode}.
 */
package org.dentary.codes;
