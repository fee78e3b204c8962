/**
 * A report's cells laid out as people read them: rows for classes never sampled, one dimension across, and flags on small
 * cells. The numbers come from one package up and are not changed here. Start reading at {@link
 * org.dentary.prevalence.table.PrevalenceTable}.
 */
package org.dentary.prevalence.table;
