/** What was typed or scanned in the box of every page: found, explained, or held together as one kit. */
package org.dentary.portal.find;
