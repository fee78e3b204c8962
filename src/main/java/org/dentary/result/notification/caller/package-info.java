/**
 * A caller without a stub: their animals found by telephone number, name or registration, and what may be said of them. Each
 * search is audited with its purpose; nothing here is written but that. Start reading at {@link
 * org.dentary.result.notification.caller.CallerService}.
 */
package org.dentary.result.notification.caller;
