/**
 * A laboratory's file read into rows, from CSV, a workbook or HL7 messages, and what can be said of each row by itself. What
 * takes the database to say (whose specimen, which order, known already) is said one package up. Start reading at {@link
 * org.dentary.result.imports.file.TableReader}.
 */
package org.dentary.result.imports.file;
