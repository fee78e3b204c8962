/**
 * Tables that leave the house: guarded CSV, plain XLSX, streamed rows, keyset pages. It does not know what a column
 * means. Start reading at {@link org.dentary.platform.table.CsvTable}.
 */
package org.dentary.platform.table;
