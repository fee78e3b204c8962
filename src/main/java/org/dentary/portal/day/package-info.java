/**
 * The end of a day at a station: whether animals, numbers, jaws, photos and jars add up. It records nothing; what does not
 * add up is put right where it was recorded. Start reading at {@link org.dentary.portal.day.DayService}.
 */
package org.dentary.portal.day;
