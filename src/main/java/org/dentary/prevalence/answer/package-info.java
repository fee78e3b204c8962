/** First answers on a data cut, stored and served from there for ever. */
package org.dentary.prevalence.answer;
