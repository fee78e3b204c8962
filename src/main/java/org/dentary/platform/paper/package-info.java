/**
 * What every paper of the service shares: its fonts, and the foot of each page. What a label, a letter or a report says is
 * drawn in the room it belongs to. Start reading at {@link org.dentary.platform.paper.PaperFont}.
 */
package org.dentary.platform.paper;
