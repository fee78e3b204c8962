/**
 * How a station's kits add up: issued, used, voided and left, block by block, and the pages to issue and print them. Issuing
 * itself is {@code kit}'s. Start reading at {@link org.dentary.portal.stock.StockService}.
 */
package org.dentary.portal.stock;
