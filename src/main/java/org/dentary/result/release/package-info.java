/** Release of a detection by a second person. */
package org.dentary.result.release;
