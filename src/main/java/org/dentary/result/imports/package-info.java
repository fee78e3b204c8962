/**
 * Laboratories' files: looked through line by line, and posted as a whole or not at all. How a file is read stands in {@code
 * file}, how far a large one has come in {@code progress}, what was left out in {@code held}, and how each laboratory's own columns and words read in {@code
 * result.mapping}; what a finding means, and what outcome it gives, is no matter of this package. Start reading at {@link
 * org.dentary.result.imports.ImportPreviewService}.
 */
package org.dentary.result.imports;
