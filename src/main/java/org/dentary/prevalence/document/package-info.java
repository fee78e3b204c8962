/**
 * The prevalence report as a document to file, send or print: PDF and workbook. It lays out the answer that
 * {@link org.dentary.prevalence.PrevalenceAnswers} gives and computes no figure of its own. Start reading at
 * {@link org.dentary.prevalence.document.PrevalenceDocumentsResource}.
 */
package org.dentary.prevalence.document;
