/**
 * Outcomes that a person should look at, and that somebody did: what is odd is found by the rules of outcomes, what is done
 * about it is not decided here. Start reading at {@link org.dentary.result.review.ReviewService}.
 */
package org.dentary.result.review;
