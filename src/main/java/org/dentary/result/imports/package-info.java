/**
 * Laboratories' files: read, looked through line by line, and posted as a whole or not at all; and how each laboratory's
 * own columns read. What a finding means, and what outcome it gives, is no matter of this package. Start reading at
 * {@link org.dentary.result.imports.ImportPreviewService}.
 */
package org.dentary.result.imports;
