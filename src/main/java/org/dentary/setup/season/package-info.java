/**
 * Where a coordinator gets a season ready: what is still missing, its days, opening and closing it, and the review of its
 * protocol and cautions. What a state allows is {@code plan}'s to say. Start reading at {@link
 * org.dentary.setup.season.SeasonPages}.
 */
package org.dentary.setup.season;
