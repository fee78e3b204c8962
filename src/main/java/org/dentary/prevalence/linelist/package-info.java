/** The line list: one row per animal and disease, filtered, paged and streamed. */
package org.dentary.prevalence.linelist;
