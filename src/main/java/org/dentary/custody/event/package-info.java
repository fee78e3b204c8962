/**
 * Single events that are no hand-over and no packing: stored, moved, a temperature, a tamper seal, lost and found,
 * destroyed, corrected; how any event is shown. Start reading at
 * {@link org.dentary.custody.event.CustodyEventService}.
 */
package org.dentary.custody.event;
