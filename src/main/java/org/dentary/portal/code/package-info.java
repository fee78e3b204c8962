/**
 * What a code is and where it is, its symbols, and whether codes scanned together are one kit's. Which animal or box a code
 * leads to is looked for in {@code portal.find}, and nothing is written here. Start reading at {@link
 * org.dentary.portal.code.CodeService}.
 */
package org.dentary.portal.code;
