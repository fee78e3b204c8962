/**
 * The papers of a submission: its manifest as PDF, CSV and workbook. They say what the submission holds and change nothing.
 * Start reading at {@link org.dentary.submission.manifest.ManifestService}.
 */
package org.dentary.submission.manifest;
