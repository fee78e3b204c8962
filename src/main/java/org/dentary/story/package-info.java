/**
 * An animal as a whole: what is known of it, what is missing and what is next, told to each role as far as that role may
 * know. It changes nothing. Start reading at {@link org.dentary.story.StoryService}.
 */
package org.dentary.story;
