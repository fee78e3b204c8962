/**
 * Codes as the symbols that scanners read: their modules, and pictures of them. Where a symbol stands on a label, and how
 * large, is said in {@code codes.sheet}. Start reading at {@link org.dentary.codes.symbol.Symbols}.
 */
package org.dentary.codes.symbol;
