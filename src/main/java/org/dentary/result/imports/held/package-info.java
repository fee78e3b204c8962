/**
 * The work list of lines that were left out when their file was posted: which wait, which the laboratory reported anew, and
 * what came of the others. It reads and posts no file. Start reading at {@link
 * org.dentary.result.imports.held.HeldLineService}.
 */
package org.dentary.result.imports.held;
