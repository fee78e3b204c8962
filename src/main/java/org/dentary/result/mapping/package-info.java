/**
 * How each laboratory's own files read: column names, date format and words, mapped once and kept edition by edition; and
 * what their codes in HL7 messages mean, each edition from a day on. Reading a file by them is {@code
 * result.imports.file}'s. Start reading at {@link org.dentary.result.mapping.ColumnMap}, then {@link
 * org.dentary.result.mapping.ColumnMapService}.
 */
package org.dentary.result.mapping;
