/** The line of an animal for a disease: the narrow row that reports read, revised when what it depends on changes. */
package org.dentary.animal.line;
