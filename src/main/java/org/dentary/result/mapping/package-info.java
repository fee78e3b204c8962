/**
 * How each laboratory's own files read: column names, date format and words, mapped once and kept edition by edition. What
 * their codes in HL7 messages mean is kept the same way, each edition from a day on. The reading itself is
 * {@link org.dentary.result.imports.ColumnMap} and {@link org.dentary.result.imports.CodeMap}. Start reading at
 * {@link org.dentary.result.mapping.ColumnMapService}.
 */
package org.dentary.result.mapping;
