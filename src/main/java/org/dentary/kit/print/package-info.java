/**
 * Labels on paper: what a block's printing takes, its sheets and cover, one label again, and which stock lasts where. How a
 * label is drawn is {@code codes.sheet}'s, which labels there are is {@code kit}'s. Start reading at {@link
 * org.dentary.kit.print.LabelPrintService}.
 */
package org.dentary.kit.print;
