/**
 * The line list as it leaves: one row per animal and disease, filtered, paged and streamed. The rows are kept in {@code
 * animal.line} and not changed here. Start reading at {@link org.dentary.prevalence.linelist.LineColumn}, then {@link
 * org.dentary.prevalence.linelist.LineListQueries}.
 */
package org.dentary.prevalence.linelist;
