/**
 * What the first detection of a disease in a unit asks of people before anything is released: owned steps, an ordered list
 * of who is told, and the deer that could have been mixed up with it. It derives and releases nothing. Start reading at
 * {@link org.dentary.result.incident.IncidentService}.
 */
package org.dentary.result.incident;
