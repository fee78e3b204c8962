/**
 * Hand-overs: offered, accepted in whole or part, refused, signed on the screen or on paper, and those that nobody
 * answers. Pages are the desk's. Start reading at {@link org.dentary.custody.handover.HandOverService}.
 */
package org.dentary.custody.handover;
