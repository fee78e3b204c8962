/**
 * How each laboratory's own files read: column names, date format and words, mapped once and kept edition by edition. The
 * reading itself is {@link org.dentary.result.imports.ColumnMap}. Start reading at
 * {@link org.dentary.result.mapping.ColumnMapService}.
 */
package org.dentary.result.mapping;
