/**
 * The bench of somebody who handles tissue: what is offered to them, what they have, what they hand over, what does not
 * add up. The rules are {@link org.dentary.custody.handover.HandOverService}'s; here are pages and tables. Start reading at
 * {@link org.dentary.custody.desk.DeskPages}.
 */
package org.dentary.custody.desk;
