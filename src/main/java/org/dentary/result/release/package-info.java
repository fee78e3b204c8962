/**
 * Release of a detection by a second person. Who is told of it is {@code result.notification}'s. Start reading at {@link
 * org.dentary.result.release.ReleaseService}.
 */
package org.dentary.result.release;
