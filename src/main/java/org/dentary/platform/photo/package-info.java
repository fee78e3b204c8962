/**
 * Photographs that somebody sent: read within limits and drawn anew, so that nothing of the file but what it shows is
 * kept. Who may add, see and erase one is for the rooms that keep them. Start reading at
 * {@link org.dentary.platform.photo.PhotoReader}.
 */
package org.dentary.platform.photo;
