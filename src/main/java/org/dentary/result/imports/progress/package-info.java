/**
 * How far a large file has come, step by step, and why it stopped; kept apart from the import, so that it can be read while
 * the import's transaction is open. It reads no file and decides nothing. Start reading at {@link
 * org.dentary.result.imports.progress.ProgressService}.
 */
package org.dentary.result.imports.progress;
