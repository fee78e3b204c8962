/** The end of a day at a station: whether animals, numbers, jaws, photos and jars add up. It records nothing. Start at DayService. */
package org.dentary.portal.day;
